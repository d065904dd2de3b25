import { type Cutter, heightAt, radiusAt } from '@pourproof/geometry';
import { radians } from '@pourproof/plane';
import type { Bit } from '../job/bit.ts';
import type { StrokeSection } from '../levelling/stroke-margin.ts';
import { cutterOf } from './cutter-of.ts';

/** What a job's bits make of a stroke of any width; lengths in mm. */
export interface CutShape {
  /** Width that the bit which enters narrow strokes best still enters; 0 for a V that comes to a point or a round. */
  readonly entersMm: number;
  /** Deepest that any stroke gets. */
  readonly deepestMm: number;
  /** Included angle of the walls where a V shapes them; `null` for upright walls. */
  readonly includedRad: number | null;
  /** Section of a stroke in its middle; `null` where no bit enters. */
  readonly sectionAt: (widthMm: number) => StrokeSection | null;
}

/**
 * The shape that the bits of a job give to strokes at a depth. The first V among them shapes the walls: others only clear its floor. Without one walls
 * count as upright: what a ball or a rounded corner leaves above the floor is in the volume, not in the section.
 */
export function cutShape(bits: readonly Bit[], depthMm: number): CutShape {
  const vee = bits.find((bit) => bit.kind === 'vee');
  return vee === undefined
    ? uprightShape(bits.map(cutterOf), depthMm)
    : veeShape(cutterOf(vee), { tipMm: vee.tipMm, includedRad: radians(vee.angleDeg), depthMm });
}

function uprightShape(cutters: readonly Cutter[], depthMm: number): CutShape {
  const entersMm = Math.min(...cutters.map((cutter) => 2 * radiusAt(cutter, depthMm)));
  return {
    entersMm,
    deepestMm: depthMm,
    includedRad: null,
    sectionAt: (widthMm) => (widthMm < entersMm ? null : { widthMm, depthMm, includedRad: null }),
  };
}

function veeShape(
  cutter: Cutter,
  { tipMm, includedRad, depthMm }: { tipMm: number; includedRad: number; depthMm: number },
): CutShape {
  const deepestMm = Math.min(depthMm, cutter.cuttingLengthMm, heightAt(cutter, cutter.diameterMm / 2));
  return {
    entersMm: tipMm,
    deepestMm,
    includedRad,
    sectionAt: (widthMm) => {
      const depth = Math.min(deepestMm, heightAt(cutter, widthMm / 2));
      return widthMm > tipMm && depth > 0 ? { widthMm, depthMm: depth, includedRad } : null;
    },
  };
}
