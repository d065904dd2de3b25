import { reachedOutline } from '@pourproof/cutting';
import { arcRingsArea, erodedArea, openedArea, strokeWidths, vVolume } from '@pourproof/geometry';

/** Radius of the cutter that is asked about, mm. */
export const RADIUS_MM = 0.8;

/** All that a proof asks: one cut with its outline, erosion, widths and a V cut; their sum, so that no work is left out. */
export function allMeasures(axis) {
  return (
    openedArea(axis, RADIUS_MM) +
    erodedArea(axis, RADIUS_MM) +
    arcRingsArea(reachedOutline(axis, RADIUS_MM, RADIUS_MM)) +
    strokeWidths(axis).lengthMm +
    vVolume(axis, { includedRad: Math.PI / 3, depthMm: 3 })
  );
}
