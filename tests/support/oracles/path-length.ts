import type { CutterPath } from '@pourproof/cutting';

/** Length of all moves of a path in the wood, plunges within runs included, mm: arcs by their radius and turn. */
export function pathLength({ points, bulges, runEnds }: CutterPath): number {
  let sum = 0;
  runEnds.forEach((end, k) => {
    for (let i = k === 0 ? 0 : runEnds[k - 1]!; i < end - 1; i++) {
      const chord = Math.hypot(points[3 * i + 3]! - points[3 * i]!, points[3 * i + 4]! - points[3 * i + 1]!);
      const turn = 4 * Math.atan(Math.abs(bulges[i]!));
      const plan = turn < 1e-6 ? chord : (chord * turn) / (2 * Math.sin(turn / 2));
      sum += Math.hypot(plan, points[3 * i + 5]! - points[3 * i + 2]!);
    }
  });
  return sum;
}
