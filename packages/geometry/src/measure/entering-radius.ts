import type { MedialAxis } from '../medial-axis/medial-axis.ts';

/**
 * A clearance within this share of a cutter's radius counts as that radius. The clearances along a stroke drawn as wide as the cutter differ by
 * rounding, about 1e-15 of the artwork's size: without this the cutter would enter here and not there, and the same stroke turned would give
 * another cut. Ten times more would show in areas, which are promised to 1e-9.
 */
export const TIE_SHARE = 1e-9;

/**
 * The radius with which a cutter is let into the artwork, mm: its own, or twice {@link TIE_SHARE} less where some clearance is as good as equal to it,
 * so that a stroke as wide as the cutter is cut, all along. Linear time.
 */
export function enteringRadius(axis: MedialAxis, radiusMm: number): number {
  const { nodeR } = axis;
  let off = Infinity;
  for (let k = 0; k < nodeR.length; k++) {
    off = Math.min(off, Math.abs(nodeR[k] - radiusMm));
  }
  return off <= radiusMm * TIE_SHARE ? radiusMm * (1 - 2 * TIE_SHARE) : radiusMm;
}
