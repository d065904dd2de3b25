import { type Rings, ringStart } from '@pourproof/plane';

/**
 * Chords of a curve are as long as the tolerance allows: a chord's length times its turn is eight times the height of the curve over it. Where it is
 * more than twice that on both sides of a point, no curve was drawn there.
 */
const MOST_OVER_HEIGHT = 16;

/** No curve is flattened so coarsely that it turns by more, radians. */
const MOST_TURN = Math.PI / 3;

/** Turns below this are rounding, radians. */
const LEAST_TURN = 1e-7;

/** How an outline turns at each of its points, radians: positive where it turns from +x to +y. */
export function outlineTurns({ coords, ringEnds }: Rings): Float64Array {
  const turns = new Float64Array(coords.length / 2);
  eachPoint({ coords, ringEnds }, (h, i, j) => {
    const [ax, ay] = [coords[2 * i] - coords[2 * h], coords[2 * i + 1] - coords[2 * h + 1]];
    const [bx, by] = [coords[2 * j] - coords[2 * i], coords[2 * j + 1] - coords[2 * i + 1]];
    turns[i] = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  });
  return turns;
}

/**
 * Points of flattened outlines that were drawn as corners: 1 for a corner, 0 where a curve or a straight line goes on.
 *
 * @param toleranceMm the farthest that a chord lies from its curve
 */
export function outlineCorners(rings: Rings, turns: Float64Array, toleranceMm: number): Uint8Array {
  const { coords } = rings;
  const isCorner = new Uint8Array(turns.length);
  eachPoint(rings, (h, i, j) => {
    const turn = Math.abs(turns[i]);
    const before = Math.hypot(coords[2 * i] - coords[2 * h], coords[2 * i + 1] - coords[2 * h + 1]);
    const after = Math.hypot(coords[2 * j] - coords[2 * i], coords[2 * j + 1] - coords[2 * i + 1]);
    const isSharp = turn > LEAST_TURN && turn * Math.min(before, after) > MOST_OVER_HEIGHT * toleranceMm;
    isCorner[i] = turn > MOST_TURN || isSharp ? 1 : 0;
  });
  return isCorner;
}

/** Calls for each point with the one before and the one after it. */
function eachPoint(rings: Rings, take: (before: number, at: number, after: number) => void): void {
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    for (let i = from; i < to; i++) {
      take(i === from ? to - 1 : i - 1, i, i + 1 === to ? from : i + 1);
    }
  }
}
