import type { Point } from '@pourproof/plane';
import { BOX_STRIDE } from './obb-tree-layout.ts';

/** Every so manieth of some runs of a node. */
interface SomeRuns {
  readonly order: Int32Array;
  /** Of each run: middle, unit direction, half extents along it and across it. */
  readonly runBox: Float64Array;
  readonly low: number;
  readonly high: number;
  readonly step: number;
}

/**
 * Lengths of both halves of runs that are told apart along a direction, summed up, mm: those with their middle before `middle` and the others. Twice
 * the length of all where they lie on one side, which are no halves.
 */
export function lengthOfHalves(
  { order, runBox, low, high, step }: SomeRuns,
  [dx, dy]: Point,
  middle: number,
): number {
  let lowest = Infinity;
  let lowerEnd = -Infinity;
  let upperStart = Infinity;
  let highest = -Infinity;
  for (let k = low; k < high; k += step) {
    const at = order[k] * BOX_STRIDE;
    const place = runBox[at] * dx + runBox[at + 1] * dy;
    const half =
      Math.abs(runBox[at + 2] * dx + runBox[at + 3] * dy) * runBox[at + 4] +
      Math.abs(runBox[at + 3] * dx - runBox[at + 2] * dy) * runBox[at + 5];
    if (place < middle) {
      lowest = Math.min(place - half, lowest);
      lowerEnd = Math.max(place + half, lowerEnd);
    } else {
      upperStart = Math.min(place - half, upperStart);
      highest = Math.max(place + half, highest);
    }
  }
  const lower = lowest < Infinity ? lowerEnd - lowest : 0;
  const upper = upperStart < Infinity ? highest - upperStart : 0;
  return lower > 0 && upper > 0 ? lower + upper : 2 * (lower + upper);
}
