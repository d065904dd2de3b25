import { type Cutter, heightAt, radiusAt } from '@pourproof/cutting';
import type { VeeBit } from '@pourproof/job';
import { radians } from '@pourproof/plane';
import { cutterOf } from './cutter-of.ts';

/** How deep in mm a V may go: to the end of its flanks or of its cutting edge. */
export function veeReachMm(vee: VeeBit): number {
  const cutter = cutterOf(vee);
  return Math.min(cutter.cuttingLengthMm, heightAt(cutter, cutter.diameterMm / 2));
}

/** How deep in mm a V of this angle and tip, as large as need be, goes in a stroke of a width. */
export function veeDepthMm(vee: VeeBit, widthMm: number): number {
  return heightAt(largeVee(vee, widthMm), widthMm / 2);
}

/**
 * Width in mm at the face of the groove that a V of this angle and tip, as large as need be, cuts at a depth.
 */
export function veeWidthMm(vee: VeeBit, depthMm: number): number {
  const half = radians(vee.angleDeg) / 2;
  // a round tip makes it wider by less than its radius over the cosine
  const mostMm = 2 * depthMm * Math.tan(half) + vee.tipMm + (2 * vee.tipRadiusMm) / Math.cos(half);
  return 2 * radiusAt(largeVee(vee, mostMm), depthMm);
}

/** The same V, twice as wide as needed. */
function largeVee(vee: VeeBit, widthMm: number): Cutter {
  return cutterOf({ ...vee, diameterMm: 2 * Math.max(vee.diameterMm, widthMm), cuttingLengthMm: null });
}
