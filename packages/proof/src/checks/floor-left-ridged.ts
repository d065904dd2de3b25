import { booleans } from '@pourproof/arrangement';
import { medialAxis } from '@pourproof/geometry';
import { type Bit, flatBitsBelow } from '@pourproof/job';
import { type CleanRegion, mmFromInches, packRings } from '@pourproof/plane';
import { floorLeft, floorRegions, sweptBy } from '../cut/floor-left.ts';
import { veeDepthMm, veeReachMm } from '../cut/vee-depth.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfRings } from './places.ts';

/** The tip covers a smaller floor in a few rounds, mm² (our choice: a square of 2 mm). */
const MIN_FLOOR_MM2 = 4;
/** Thickness of a board that is not described, mm: three quarters of an inch (common practice). */
const USUAL_BOARD_MM = mmFromInches(0.75);
/** Share of the ridged floor that a flat bit must clear to be offered where it does not clear all (our choice). */
const WORTHWHILE = 0.5;

/** Level floor at the depth limit that only the point of a V passes over: it leaves ridges, not a floor. */
export const floorLeftRidged: Check = {
  code: 'floor-left-ridged',
  run: (measured) => {
    const { carving, shape, job } = measured;
    // how fine the ridges of a ball are depends on the stepover, which the maker chooses
    if (shape.includedRad === null || carving.scallopedFloorMm2 < MIN_FLOOR_MM2) {
      return null;
    }
    const { floor, left } = floorRegions(measured, job.toleranceMm);
    const { areaMm2, pieces } = floorLeft(left, job.toleranceMm);
    if (areaMm2 < MIN_FLOOR_MM2) {
      return null;
    }
    return {
      code: 'floor-left-ridged',
      severity: 'caution',
      where: pieces.map((piece) =>
        placeOfRings([piece.ring[0] ?? 0, piece.ring[1] ?? 0], packRings([piece.ring]), {
          what: 'floor',
          areaMm2: piece.areaMm2,
        }),
      ),
      measured: { value: areaMm2, quantity: 'area', unit: 'mm²' },
      limit: { value: MIN_FLOOR_MM2, quantity: 'area', unit: 'mm²' },
      because: ['opening-by-disc', 'own-inference'],
      fix: { options: [...flatBit(measured, floor, left, areaMm2), ...deeper(measured)] },
    };
  },
};

/** The widest flat bit, tried on the floor, after which nothing is left to the tip; where none does that, the one that leaves least. */
function flatBit(measured: Measured, floor: CleanRegion, left: CleanRegion, ridgedMm2: number): Fix[] {
  const { job, axis } = measured;
  const widest = 2 * axis.nodeR.reduce((most, r) => Math.max(most, r), 0);
  const floorAxis = medialAxis(floor);
  let best: { readonly diameterMm: number; readonly leftMm2: number } | null = null;
  for (const diameterMm of flatBitsBelow(widest, job.units, job.materials.cutters)) {
    const rest = booleans(left, sweptBy(floorAxis, diameterMm, job.toleranceMm), 'subtract');
    const leftMm2 = floorLeft(rest, job.toleranceMm).areaMm2;
    if (best === null || leftMm2 < best.leftMm2) {
      best = { diameterMm, leftMm2 };
    }
    if (leftMm2 < MIN_FLOOR_MM2) {
      break;
    }
  }
  return best === null || best.leftMm2 > (1 - WORTHWHILE) * ridgedMm2
    ? []
    : [
        {
          do: 'use-bit',
          kind: 'flat',
          diameterMm: best.diameterMm,
          floorSharePct: Math.floor(100 * (1 - best.leftMm2 / ridgedMm2)),
          clears: best.leftMm2 < MIN_FLOOR_MM2,
        },
      ];
}

/** The depth at which there is no floor. */
function deeper(measured: Measured): Fix[] {
  const depthMm = deepenTo(measured);
  return depthMm === null
    ? []
    : [{ do: 'deepen', byMm: Math.ceil((depthMm - measured.job.depthMm) * 100) / 100, clears: true }];
}

/**
 * The depth at which the flanks of a V of the job meet everywhere; `null` where none can, or the board is too
 * thin for it.
 */
function deepenTo({ job, carving, axis }: Measured): number | null {
  const widest = 2 * axis.nodeR.reduce((w, r) => Math.max(w, r), 0);
  const board = job.board?.thicknessMm ?? USUAL_BOARD_MM;
  // the other bits would have to clear that deep as well
  const reach = (bit: Bit): number =>
    bit.kind === 'vee' ? veeReachMm(bit) : (bit.cuttingLengthMm ?? Number.POSITIVE_INFINITY);
  const most = Math.min(board / 2, ...job.bits.map(reach));
  const depths = job.bits.flatMap((bit) => (bit.kind === 'vee' ? [veeDepthMm(bit, widest)] : []));
  const deepest = Math.max(...depths);
  return deepest > carving.maxDepthMm && deepest <= most ? deepest : null;
}
