import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { crossingEdges } from './axis-blocks.ts';
import { cappedVolume, VOLUME } from './cell-sums.ts';
import { cellsAbove, cellsBelow } from './part-cells.ts';

/** A V-shaped cutter with a true point, and how deep it may go. */
export interface VCut {
  /** Included angle A between the flanks, radians, above 0 and below π. */
  readonly includedRad: number;
  /** Depth limit of the tip, mm; Infinity for none. */
  readonly depthMm: number;
}

/**
 * Volume in mm³ that a V removes when its flanks touch the artwork's edge wherever they can: the integral of
 * min(depth limit, distance to the edge / tan(A/2)) over the artwork. Exact for the polygon up to rounding: a
 * closed form per axis edge.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * vVolume(medialAxis(bar), { includedRad: Math.PI / 2, depthMm: Infinity }).toFixed(3); // 239.583
 *
 * @throws {RangeError} when the angle or the depth is out of range
 */
export function vVolume(axis: MedialAxis, cut: VCut): number {
  const slope = slopeOf(cut);
  const cap = cut.depthMm * slope;
  const crossing = crossingEdges(axis, cap);
  const below = cellsBelow(axis, cap, crossing);
  const above = cellsAbove(axis, cap, crossing);
  // up to the cap the depth follows the distance to the boundary; beyond it only within a strip, and is level
  // from there on
  return (below[VOLUME] + (cap < Infinity ? cappedVolume(above, cap) : 0)) / slope;
}

/** Half width gained per mm of depth, tan(A/2). */
function slopeOf({ includedRad, depthMm }: VCut): number {
  if (!(includedRad > 0 && includedRad < Math.PI)) {
    throw new RangeError(`includedRad is ${includedRad}; give an angle above 0 and below π`);
  }
  if (!(depthMm >= 0)) {
    throw new RangeError(`depthMm is ${depthMm}; give a number of millimetres, 0 or more`);
  }
  return Math.tan(includedRad / 2);
}
