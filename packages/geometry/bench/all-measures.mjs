import { reachedOutline } from '@pourproof/cutting';
import {
  arcRingsArea,
  erodedArea,
  leftStanding,
  openedArea,
  strokeWidths,
  vVolume,
} from '@pourproof/geometry';

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

/** Shares of an axis' nodes that a cutter does not fit at. */
const SHARES = [0.3, 0.6, 0.9, 0.99];

/** All pieces that a cutter of a radius leaves standing; of several that fit at fewer and fewer places, by default. */
export function allStanding(axis, radius) {
  const radii = radius === undefined ? SHARES.map((share) => clearanceAt(axis, share)) : [radius];
  return radii.reduce((sum, each) => sum + leftStanding(axis, each, 0.005).pieces.length, 0);
}

/** The clearance that a share of an axis' nodes does not have, boundary left out, mm. */
export function clearanceAt(axis, share) {
  const clearances = axis.nodeR.filter((r) => r > 0).sort();
  return clearances[Math.floor(share * (clearances.length - 1))];
}
