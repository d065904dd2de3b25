import { type Point, pollStep, type Rings, ringCoords } from '@pourproof/plane';
import { NearCentres } from './near-centres.ts';

/** Centres among which every pair is tried on a side; where more are near, the side is halved first. */
const FEW = 8;

/** What may be rounding, as a share of a distance. */
const REL_TOL = 1e-12;

/** Pieces of a side shorter than this, mm, are told by their middle: where very many discs are as near. */
const SHORTEST_MM = 1e-9;

/**
 * The greatest distance from a point on an outline to the nearest of some centres, mm, or `leastMm` if that is more. Along a side the
 * distance to one centre is largest at an end, that to the nearest also where two are as near. Sides are halved, and halves given up
 * that cannot reach farther than what was found: about O((n + m) log m) for n sides and m centres.
 */
export function farthestFromDiscs(outline: Rings, centres: readonly Point[], leastMm: number): number {
  const near = new Discs(centres);
  let most = leastMm;
  for (let i = 0; i < outline.coords.length; i += 2) {
    most = Math.max(most, near.distance(outline.coords[i], outline.coords[i + 1]));
  }
  for (let k = 0; k < outline.ringEnds.length; k++) {
    const ring = ringCoords(outline, k);
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      most = alongSide(near, [ring[i], ring[i + 1]], [ring[j] - ring[i], ring[j + 1] - ring[i + 1]], most);
    }
  }
  return most;
}

/** The same along the side from a by v, or `leastMm` if that is more. */
function alongSide(near: Discs, [ax, ay]: Point, [vx, vy]: Point, leastMm: number): number {
  const length = Math.hypot(vx, vy);
  const waiting: [number, number][] = [[0, 1]];
  let most = leastMm;
  for (let piece = waiting.pop(); piece !== undefined; piece = waiting.pop()) {
    pollStep();
    const [from, to] = piece;
    const half = ((to - from) / 2) * length;
    const middle = (from + to) / 2;
    const [mx, my] = [ax + middle * vx, ay + middle * vy];
    const nearest = near.nearest(mx, my);
    const distance = near.distanceTo(nearest, mx, my);
    most = Math.max(most, distance);
    // from one centre no point of a piece is farther than its ends, as on a chord of a disc's arc
    const reach = Math.max(
      near.distanceTo(nearest, ax + from * vx, ay + from * vy),
      near.distanceTo(nearest, ax + to * vx, ay + to * vy),
    );
    if (Math.min(reach, distance + half) <= most * (1 + REL_TOL)) {
      continue;
    }
    // whatever is nearest to a point of the piece
    const some = near.within(mx, my, distance + 2 * half);
    if (some.length <= FEW) {
      most = Math.max(most, ...equallyNear(some, [ax, ay], [vx, vy], from, to));
    } else if (half > SHORTEST_MM) {
      waiting.push([from, middle], [middle, to]);
    }
  }
  return most;
}

/** Distances to the nearest centre at the places of a piece of a side that are as near to two of them. */
function equallyNear(
  some: readonly Point[],
  [ax, ay]: Point,
  [vx, vy]: Point,
  from: number,
  to: number,
): number[] {
  const list: number[] = [];
  for (const [m, [px, py]] of some.entries()) {
    for (const [qx, qy] of some.slice(m + 1)) {
      // |a + t v − p| = |a + t v − q|
      const t =
        ((qx - px) * ((px + qx) / 2 - ax) + (qy - py) * ((py + qy) / 2 - ay)) /
        ((qx - px) * vx + (qy - py) * vy);
      if (t >= from && t <= to) {
        list.push(nearestOf(some, ax + t * vx, ay + t * vy));
      }
    }
  }
  return list;
}

function nearestOf(some: readonly Point[], px: number, py: number): number {
  return Math.min(...some.map(([cx, cy]) => Math.hypot(px - cx, py - cy)));
}

/** Centres as points, one at least. */
class Discs {
  readonly #centres: readonly Point[];
  readonly #near: NearCentres;

  constructor(centres: readonly Point[]) {
    this.#centres = centres;
    this.#near = new NearCentres(
      centres.map(([x]) => x),
      centres.map(([, y]) => y),
    );
  }

  nearest(px: number, py: number): number {
    return this.#near.nearest(px, py);
  }

  distanceTo(centre: number, px: number, py: number): number {
    return this.#near.distance(centre, px, py);
  }

  /** Distance from a point to the nearest centre. */
  distance(px: number, py: number): number {
    return this.distanceTo(this.nearest(px, py), px, py);
  }

  /** The centres not farther than `reach`, as many as tell whether there are more than {@link FEW}. */
  within(px: number, py: number, reach: number): readonly Point[] {
    return this.#near.within(px, py, reach, FEW + 1).map((k) => this.#centres[k]);
  }
}
