import { slowingBetween, TAPER_GROWTH } from './slowing-way.ts';

/** A way along the axis on which the clearance never falls, too long to be walked. */
export interface RisingWay {
  /** Way to its far end, mm. */
  readonly wholeMm: number;
  /** Clearance at a way, mm. */
  readonly radiusAt: (way: number) => number;
  /** Ways of the first nodes after a way, up to another and at most so many; the far end is none of them. */
  readonly nodesAfter: (way: number, upTo: number, most: number) => number[];
}

/** So many nodes are looked at one after the other. */
const FEW = 16;
/** What may be rounding where clearances are compared, as a share of them. */
const REL_TOL = 1e-9;

/**
 * The same as `slowingWay` on a way on which the clearance R never falls, from `from` on. Between two ways a and b nothing slows where
 * R(2a) > {@link TAPER_GROWTH} R(b); else they are parted, until few nodes lie between. Where doubling the way up to its root widens it by
 * (1 + ε) times that growth at least, R grows by as much between ways that must be parted: about log(R(end)/R(from))/ε looks of O(log n) each.
 */
export function slowingWayUp(way: RisingWay, from: number): number | null {
  const end = way.wholeMm / 2;
  const waiting: [number, number][] = end >= from ? [[from, end]] : [];
  for (let piece = waiting.pop(); piece !== undefined; piece = waiting.pop()) {
    const [low, high] = piece;
    if (way.radiusAt(2 * low) > TAPER_GROWTH * way.radiusAt(high) * (1 + REL_TOL)) {
      continue;
    }
    const places = placesAfter(way, low, high, FEW);
    // a place after the middle parts them: what is looked for lies between neighbours
    const middle = (low + high) / 2;
    const [next] = places.length < FEW ? [high] : placesAfter(way, middle, high, 1);
    if (next === undefined || next >= high) {
      const between = places.length < FEW ? places : placesAfter(way, low, middle, Infinity);
      const slowing = slowingBetween([...between, high], low, 0, (at) => way.radiusAt(at));
      if (slowing !== null) {
        return slowing;
      }
    } else {
      waiting.push([next, high], [low, next]);
    }
  }
  return null;
}

/** The first ways, at most so many, after `low` and before `high` at which either it or its double passes a node, rising. */
function placesAfter(way: RisingWay, low: number, high: number, most: number): number[] {
  const single = way.nodesAfter(low, high, most);
  const doubled = way.nodesAfter(2 * low, 2 * high, most).map((at) => at / 2);
  return [...single, ...doubled]
    .filter((at) => at > low && at < high)
    .sort((a, b) => a - b)
    .slice(0, most);
}
