/** A branch of the axis by the way along it from its end, mm. */
export interface Widening {
  /** Way at each of its nodes. */
  readonly ways: readonly number[];
  /** Way to its far end. */
  readonly wholeMm: number;
  /** Clearance at a way, mm; that of the far end beyond it. */
  readonly radiusAt: (way: number) => number;
}

/**
 * A branch that narrows to its end is a taper up to where doubling the distance from the tip widens it by at
 * most this factor.
 */
export const TAPER_GROWTH = 1.25;
/** Ways nearer to each other than this factor have nothing between them that matters. */
const CLOSE_WAYS = 1.05;
/** What may be rounding where clearances are compared, as a share of them. */
const REL_TOL = 1e-9;
/** Golden sections narrow the place of a least value to 1e-6 of where it is looked for. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const GOLDEN_STEPS = 30;
/** Relative tolerance on a way that is looked for, and the steps at most to find it. */
const WAY_REL_TOL = 1e-12;
const WAY_STEPS = 60;

/**
 * First way at which doubling it widens a branch by no more than {@link TAPER_GROWTH}, mm; `null` for none. Ways count from where its flanks
 * meet, `before` its end.
 */
export function slowingWay(branch: Widening, before: number): number | null {
  const last = (branch.wholeMm - before) / 2;
  const places = [...placesOf(branch.ways, before, last), last];
  return slowingBetween(places, 0, before, (way) => branch.radiusAt(way));
}

/** Where either of both ways passes a node, up to `last`, rising: between them both radii are smooth. */
function placesOf(ways: readonly number[], before: number, last: number): number[] {
  const places: number[] = [];
  let doubled = 0;
  for (let single = 0; single < ways.length || doubled < ways.length; ) {
    const half = doubled < ways.length ? (ways[doubled] - before) / 2 : Infinity;
    const isSingle = single < ways.length && ways[single] <= half;
    const way = isSingle ? ways[single++] : half;
    doubled += isSingle ? 0 : 1;
    if (way >= last) {
      break;
    }
    if (way >= 0 && way + before > 0) {
      places.push(way);
    }
  }
  return places;
}

/**
 * The first way from `from` on at which doubling it widens no more than that; `null` for none. Between two of the rising places neither radius
 * has a kink, nor turns from rising to falling.
 */
export function slowingBetween(
  places: readonly number[],
  from: number,
  before: number,
  radiusAt: (way: number) => number,
): number | null {
  const excessAt = (way: number): number => radiusAt(2 * way + before) - TAPER_GROWTH * radiusAt(way);
  let low = from;
  let [single, doubled] = [radiusAt(from), radiusAt(2 * from + before)];
  for (const way of places) {
    if (way < low) {
      continue;
    }
    const [nextSingle, nextDoubled] = [radiusAt(way), radiusAt(2 * way + before)];
    if (way + before > 0) {
      if (low + before > 0 && doubled - TAPER_GROWTH * single <= 0) {
        return low;
      }
      // it may fall below 0 and rise again in between, where the way goes through a bottleneck
      const isClear =
        Math.min(doubled, nextDoubled) > TAPER_GROWTH * (1 + REL_TOL) * Math.max(single, nextSingle);
      if (!isClear) {
        const least = way > low * CLOSE_WAYS ? leastWay(low, way, excessAt) : way;
        if (excessAt(least) <= 0) {
          return firstWay(low, least, excessAt);
        }
      }
    }
    [low, single, doubled] = [way, nextSingle, nextDoubled];
  }
  return null;
}

/** Where a function that falls and then rises between two ways is least: by golden sections (Kiefer 1953). */
function leastWay(from: number, to: number, at: (way: number) => number): number {
  let [low, high] = [from, to];
  for (let k = 0; k < GOLDEN_STEPS; k++) {
    const [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (at(left) <= at(right)) {
      high = right;
    } else {
      low = left;
    }
  }
  const middle = (low + high) / 2;
  return at(middle) < at(to) ? middle : to;
}

/** Where a function that is above 0 at `low`, or 0 there at the tip, and at most 0 at `high` passes 0. */
export function firstWay(low: number, high: number, at: (way: number) => number): number {
  let [above, below] = [low, high];
  for (let k = 0; k < WAY_STEPS && below - above > WAY_REL_TOL * below; k++) {
    const middle = (above + below) / 2;
    if (at(middle) > 0) {
      above = middle;
    } else {
      below = middle;
    }
  }
  return below;
}
