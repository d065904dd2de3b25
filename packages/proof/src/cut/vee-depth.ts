import { type Cutter, heightAt, radiusAt } from '@pourproof/cutting';
import type { VeeBit } from '@pourproof/job';
import { radians } from '@pourproof/plane';
import { cutterOf } from './cutter-of.ts';

/** Greatest depth of a V, mm: down to the end of its flanks or of its cutting edge. */
export function veeReachMm(vee: VeeBit): number {
  const cutter = cutterOf(vee);
  return Math.min(cutter.cuttingLengthMm, heightAt(cutter, cutter.diameterMm / 2));
}

/** Depth in a stroke of a width of a V with this angle and tip, as large as needed, mm. */
export function veeDepthMm(vee: VeeBit, widthMm: number): number {
  return heightAt(largeVee(vee, widthMm), widthMm / 2);
}

/**
 * Width at the face of the groove that a V with this angle and tip, as large as needed, cuts at a depth, mm.
 */
export function veeWidthMm(vee: VeeBit, depthMm: number): number {
  const half = radians(vee.angleDeg) / 2;
  // a rounded tip widens it by less than its diameter over the cosine
  const boundMm = 2 * depthMm * Math.tan(half) + vee.tipMm + (2 * vee.tipRadiusMm) / Math.cos(half);
  return 2 * radiusAt(largeVee(vee, boundMm), depthMm);
}

/** The same V, twice as large as needed. */
function largeVee(vee: VeeBit, widthMm: number): Cutter {
  return cutterOf({ ...vee, diameterMm: 2 * Math.max(vee.diameterMm, widthMm), cuttingLengthMm: null });
}
