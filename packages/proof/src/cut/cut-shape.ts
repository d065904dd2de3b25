import { type Cutter, heightAt, radiusAt } from '@pourproof/cutting';
import type { Bit, VeeBit } from '@pourproof/job';
import { radians } from '@pourproof/plane';
import { type StrokeSection, sectionArea } from '../levelling/stroke-section.ts';
import { cutterOf } from './cutter-of.ts';
import { veeReachMm } from './vee-depth.ts';

/** What the bits of a job make of strokes of any width; lengths in mm. */
export interface CutShape {
  /** Narrowest stroke that a bit enters; 0 for a V with a pointed or rounded tip. */
  readonly entersMm: number;
  /** Included angle of the walls if a V shapes them; `null` if none does. */
  readonly includedRad: number | null;
  /**
   * Angle of the walls from the vertical at the face: half the angle of a V; of several bits the least, whose
   * walls take up most.
   */
  readonly leanRad: number;
  /** Section of a stroke of a width; `null` if no bit enters it. */
  readonly sectionAt: (widthMm: number) => StrokeSection | null;
}

/**
 * The shape that the bits of a job give to strokes at a depth. A V shapes the walls, of several the one that
 * gets deepest: other bits only clear its floor. Without a V, a stroke has the walls of the bit that leaves
 * most room in it; what another one takes beyond them (a slender bit at the foot of a ball's walls) is in the
 * volume, not in the section.
 */
export function cutShape(bits: readonly Bit[], depthMm: number): CutShape {
  const vees = bits.filter((bit) => bit.kind === 'vee');
  return vees.length === 0
    ? clearedShape(bits.map(cutterOf), depthMm)
    : deepestShape(vees.map((vee) => veeShape(vee, depthMm)));
}

function clearedShape(cutters: readonly Cutter[], depthMm: number): CutShape {
  const depths = cutters.map((cutter) => Math.min(depthMm, cutter.cuttingLengthMm));
  const widths = cutters.map((cutter, k) => 2 * radiusAt(cutter, depths[k] ?? depthMm));
  return {
    entersMm: Math.min(...widths),
    includedRad: null,
    leanRad: Math.min(...cutters.map((cutter, k) => leanAt(cutter, depths[k] ?? depthMm))),
    sectionAt: (widthMm) => {
      // asked for at every point of every stroke
      let most: StrokeSection | null = null;
      for (const [k, cutter] of cutters.entries()) {
        if (widthMm >= (widths[k] ?? 0)) {
          const each = { widthMm, depthMm: depths[k] ?? depthMm, cutter };
          most = most === null || sectionArea(each) > sectionArea(most) ? each : most;
        }
      }
      return most;
    },
  };
}

/** The shape of several V bits: each stroke has the section of the one that cuts it deepest. */
function deepestShape(shapes: readonly CutShape[]): CutShape {
  const angles = shapes.flatMap(({ includedRad }) => (includedRad === null ? [] : [includedRad]));
  return {
    entersMm: Math.min(...shapes.map(({ entersMm }) => entersMm)),
    includedRad: Math.min(...angles),
    leanRad: Math.min(...shapes.map(({ leanRad }) => leanRad)),
    sectionAt: (widthMm) =>
      shapes
        .map((shape) => shape.sectionAt(widthMm))
        .reduce((most, each) => ((each?.depthMm ?? 0) > (most?.depthMm ?? 0) ? each : most), null),
  };
}

function veeShape(vee: VeeBit, depthMm: number): CutShape {
  const cutter = cutterOf(vee);
  const includedRad = radians(vee.angleDeg);
  const deepestMm = Math.min(depthMm, veeReachMm(vee));
  return {
    entersMm: vee.tipMm,
    includedRad,
    leanRad: includedRad / 2,
    sectionAt: (widthMm) => {
      const depth = Math.min(deepestMm, heightAt(cutter, widthMm / 2));
      return widthMm > vee.tipMm && depth > 0 ? { widthMm, depthMm: depth, cutter } : null;
    },
  };
}

/** Angle of a cutter's profile from the vertical just below a height above its tip; 0 above the profile. */
function leanAt({ pieces }: Cutter, heightMm: number): number {
  const piece = pieces.find(
    ({ fromHeightMm, toHeightMm }) => fromHeightMm < heightMm && heightMm <= toHeightMm,
  );
  if (piece === undefined) {
    return 0;
  }
  const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } = piece;
  return arc === undefined
    ? Math.atan2(toRadiusMm - fromRadiusMm, toHeightMm - fromHeightMm)
    : Math.asin((arc.centreHeightMm - heightMm) / arc.radiusMm);
}
