/**
 * Stretches of an open line `[x0, y0, x1, y1, …]` of wanted edges, in order; stretches at most `joinGapMm`
 * apart are joined over the edges between them.
 *
 * @param isWanted whether an edge, given by its two ends, is wanted
 */
export function stretchesOf(
  path: Float64Array,
  isWanted: (edge: readonly [ax: number, ay: number, bx: number, by: number]) => boolean,
  joinGapMm: number,
): readonly Float64Array[] {
  const stretches: Float64Array[] = [];
  let from = -1;
  // end of the last wanted edge
  let to = -1;
  let gapMm = 0;
  for (let i = 0; i + 3 < path.length; i += 2) {
    const [ax, ay, bx, by] = path.subarray(i, i + 4) as unknown as [number, number, number, number];
    if (!isWanted([ax, ay, bx, by])) {
      gapMm += Math.hypot(bx - ax, by - ay);
      continue;
    }
    if (from >= 0 && gapMm > joinGapMm) {
      stretches.push(path.slice(from, to + 2));
      from = -1;
    }
    from = from < 0 ? i : from;
    to = i + 2;
    gapMm = 0;
  }
  return from < 0 ? stretches : [...stretches, path.slice(from, to + 2)];
}
