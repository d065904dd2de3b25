import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { crossingEdges } from './axis-blocks.ts';
import { areaBeyondStrip } from './cell-sums.ts';
import { checkRadius } from './check-radius.ts';
import { cellsAbove } from './part-cells.ts';

/**
 * Area in mm² of the artwork eroded by a disc: the points farther than `radiusMm` from its edge, where the
 * centre of a flat cutter may go. Exact for the polygon up to rounding; 0 for an empty region or a radius
 * that fits nowhere.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * erodedArea(medialAxis(bar), 1).toFixed(9); // 114.000000000
 *
 * @param radiusMm 0 or more; 0 gives the artwork's area
 * @throws {RangeError} when the radius is negative or not finite
 */
export function erodedArea(axis: MedialAxis, radiusMm: number): number {
  checkRadius(radiusMm);
  return areaBeyondStrip(cellsAbove(axis, radiusMm, crossingEdges(axis, radiusMm)), radiusMm);
}
