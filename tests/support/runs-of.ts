import type { CutterPath } from '@pourproof/cutting';
import { polygonFromArcs } from '@pourproof/geometry';

/** The runs of a path seen from above, arcs as chords within a tolerance. */
export function runsOf(path: CutterPath, toleranceMm: number): number[][] {
  return Array.from(path.runEnds, (to, k) => {
    const from = k === 0 ? 0 : path.runEnds[k - 1]!;
    const coords = new Float64Array(2 * (to - from));
    for (let i = from; i < to; i++) {
      coords[2 * (i - from)] = path.points[3 * i]!;
      coords[2 * (i - from) + 1] = path.points[3 * i + 1]!;
    }
    const ring = { coords, ringEnds: Uint32Array.of(to - from), bulges: path.bulges.slice(from, to) };
    return Array.from(polygonFromArcs(ring, toleranceMm).coords);
  });
}
