import {
  CHORD_HEIGHT_SLACK,
  CORNER_TURN_RAD,
  pollStep,
  type Rings,
  ringStart,
  SHORT_CHORD_TOLERANCES,
  STRAIGHT_TURN_RAD,
} from '@pourproof/plane';

/**
 * Which edges of a flattened outline may be chords of a curve: 1 for edge i, from point i to the next of its ring, else 0.
 *
 * Readers turn curves into chords within `toleranceMm`, so that chords are short where they turn much. An edge that turns into a neighbour by
 * so much that a curve through both would lie farther than that from it was drawn straight. So was one that goes straight on, or into
 * corners, at both ends. An edge that is told as a chord may have been drawn straight all the same where it is short or the turn is slight; a
 * chord is told as straight only where it is cut off at both ends by other shapes.
 *
 * @param toleranceMm 0 or more: the farthest that a chord may lie from its curve; 0 for artwork without curves
 * @throws {RangeError} when the tolerance is negative or not a number
 */
export function curvedEdges(rings: Rings, toleranceMm: number): Uint8Array {
  if (!(toleranceMm >= 0)) {
    throw new RangeError(`toleranceMm is ${toleranceMm}; give a number of millimetres, 0 or more`);
  }
  const { coords, ringEnds } = rings;
  const isCurved = new Uint8Array(coords.length / 2);
  const most = 8 * CHORD_HEIGHT_SLACK * toleranceMm;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = ringEnds[k];
    for (let i = from; i < to; i++) {
      pollStep();
      const h = i === from ? to - 1 : i - 1;
      const j = i + 1 === to ? from : i + 1;
      const ax = coords[2 * i] - coords[2 * h];
      const ay = coords[2 * i + 1] - coords[2 * h + 1];
      const bx = coords[2 * j] - coords[2 * i];
      const by = coords[2 * j + 1] - coords[2 * i + 1];
      const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
      if (turn <= STRAIGHT_TURN_RAD || turn > CORNER_TURN_RAD) {
        continue;
      }
      if (Math.sqrt(ax * ax + ay * ay) * turn <= most) {
        isCurved[h] = 1;
      }
      if (Math.sqrt(bx * bx + by * by) * turn <= most) {
        isCurved[i] = 1;
      }
    }
    addShortEdges(rings, [from, to], SHORT_CHORD_TOLERANCES * toleranceMm, isCurved);
  }
  return isCurved;
}

/** Marks the edges of a ring that are no longer than `longest` and beside one that is marked. */
function addShortEdges(
  { coords }: Rings,
  [from, to]: readonly [number, number],
  longest: number,
  isCurved: Uint8Array,
): void {
  const ring = isCurved.subarray(from, to);
  const n = to - from;
  const told = ring.slice();
  for (let i = 0; i < n; i++) {
    pollStep();
    const j = (i + 1) % n;
    const [p, q] = [2 * (from + i), 2 * (from + j)];
    if (
      told[i] === 0 &&
      (told[j] !== 0 || told[(i + n - 1) % n] !== 0) &&
      Math.hypot(coords[q] - coords[p], coords[q + 1] - coords[p + 1]) <= longest
    ) {
      ring[i] = 1;
    }
  }
}
