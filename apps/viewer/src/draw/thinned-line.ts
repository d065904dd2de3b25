/**
 * Points within this many of each other are looked at together, so that a line of n points takes n·RUN steps at most however it winds; at each
 * end of a run a point stays that need not (our choice).
 */
const RUN = 256;

/**
 * A line with fewer points that keeps within a tolerance of it and ends where it ends (the rule of Ramer, Douglas and Peucker, in runs).
 *
 * @param coords `x0, y0, x1, y1, …`
 * @param tolerance in the unit of the coordinates; 0 keeps every point
 */
export function thinnedLine(coords: Float32Array, tolerance: number): Float32Array {
  const count = coords.length / 2;
  if (count <= 2 || tolerance <= 0) {
    return coords;
  }
  const isKept = new Uint8Array(count);
  const pending: (readonly [first: number, last: number])[] = [];
  for (let first = 0; first < count - 1; first += RUN) {
    pending.push([first, Math.min(first + RUN, count - 1)]);
  }
  for (let run = pending.pop(); run !== undefined; run = pending.pop()) {
    const [first, last] = run;
    isKept[first] = 1;
    isKept[last] = 1;
    const farthest = farthestFrom(coords, first, last, tolerance);
    if (farthest !== null) {
      pending.push([first, farthest], [farthest, last]);
    }
  }
  const kept = new Float32Array(2 * isKept.reduce((sum, each) => sum + each, 0));
  let at = 0;
  for (let i = 0; i < count; i++) {
    if (isKept[i] === 1) {
      kept[at++] = coords[2 * i] as number;
      kept[at++] = coords[2 * i + 1] as number;
    }
  }
  return kept;
}

/** The point between two others that lies farthest from the segment between them; `null` where none is beyond the tolerance. */
function farthestFrom(coords: Float32Array, first: number, last: number, tolerance: number): number | null {
  const [ax, ay] = [coords[2 * first] as number, coords[2 * first + 1] as number];
  const [dx, dy] = [(coords[2 * last] as number) - ax, (coords[2 * last + 1] as number) - ay];
  const length2 = dx * dx + dy * dy;
  let [farthest, most]: [number | null, number] = [null, tolerance * tolerance];
  for (let i = first + 1; i < last; i++) {
    const [px, py] = [(coords[2 * i] as number) - ax, (coords[2 * i + 1] as number) - ay];
    const share = length2 === 0 ? 0 : Math.min(Math.max((px * dx + py * dy) / length2, 0), 1);
    const off2 = (px - share * dx) ** 2 + (py - share * dy) ** 2;
    if (off2 > most) {
      [farthest, most] = [i, off2];
    }
  }
  return farthest;
}
