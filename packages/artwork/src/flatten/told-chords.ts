import {
  CHORD_HEIGHT_SLACK,
  CORNER_TURN_RAD,
  SHORT_CHORD_TOLERANCES,
  STRAIGHT_TURN_RAD,
} from '@pourproof/plane';

/** Chords keep this far within what tells them, for the rounding of maps and of resolving. */
const MARGIN = 0.9;
const MOST_TAN: number = Math.tan(MARGIN * CORNER_TURN_RAD);
/** The same for turns that are hardly any. */
const LEAST_TAN: number = 10 * STRAIGHT_TURN_RAD;
/** Curves that are no higher above a chord, mm, are the chord: far below all that is measured. */
const SAME_MM = 1e-9;

/**
 * Marks the chords of one curve that the outline would not tell from straight edges (`curvedEdges` of the geometry) although the curve leaves them:
 * they are to be halved. Only turns between chords of the curve count, as its ends may be corners. Linear.
 *
 * @param points `[x0,y0,…]` of the polyline
 * @param heights for each chord how far its curve may leave it, mm, before points were moved
 * @param moves how far each point was moved off the curve, mm
 * @param marks overwritten: 1 for each chord to halve, else 0
 * @returns how many are to be halved
 */
export function markUntold(
  points: ArrayLike<number>,
  heights: ArrayLike<number>,
  moves: ArrayLike<number>,
  toleranceMm: number,
  marks: number[],
): number {
  const n = heights.length;
  markTold(points, n, toleranceMm, marks);
  const longest = MARGIN * SHORT_CHORD_TOLERANCES * toleranceMm;
  let untold = 0;
  let before = 0;
  for (let i = 0; i < n; i++) {
    const told = marks[i];
    marks[i] = 0;
    if (told === 0 && heights[i] + Math.abs(moves[i]) + Math.abs(moves[i + 1]) > SAME_MM) {
      const isBeside = before === 1 || marks[i + 1] === 1;
      if (!isBeside || lengthOf(points, i) > longest) {
        marks[i] = 1;
        untold++;
      }
    }
    before = told;
  }
  return untold;
}

/** Writes 1 for each chord that is told by its turn into the one before or after, else 0. */
function markTold(points: ArrayLike<number>, n: number, toleranceMm: number, told: number[]): void {
  const most = 8 * CHORD_HEIGHT_SLACK * MARGIN * toleranceMm;
  const most2 = most * most;
  told.length = 0;
  told.push(0);
  for (let i = 1; i < n; i++) {
    told.push(0);
    const ax = points[2 * i] - points[2 * i - 2];
    const ay = points[2 * i + 1] - points[2 * i - 1];
    const bx = points[2 * i + 2] - points[2 * i];
    const by = points[2 * i + 3] - points[2 * i + 1];
    const dot = ax * bx + ay * by;
    const cross = Math.abs(ax * by - ay * bx);
    if (cross > LEAST_TAN * dot && cross < MOST_TAN * dot) {
      // a turn is less than its tangent
      const tan2 = (cross / dot) ** 2;
      if ((ax * ax + ay * ay) * tan2 <= most2) {
        told[i - 1] = 1;
      }
      if ((bx * bx + by * by) * tan2 <= most2) {
        told[i] = 1;
      }
    }
  }
}

function lengthOf(points: ArrayLike<number>, i: number): number {
  return Math.hypot(points[2 * i + 2] - points[2 * i], points[2 * i + 3] - points[2 * i + 1]);
}
