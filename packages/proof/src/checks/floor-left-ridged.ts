import { resolveRegions } from '@pourproof/arrangement';
import { type MedialAxis, medialAxis, openedArea, polygonFromArcs } from '@pourproof/geometry';
import { type Bit, flatBitsBelow } from '@pourproof/job';
import { type CleanRegion, mmFromInches, packRings, ringArea, ringCoords } from '@pourproof/plane';
import { veeDepthMm, veeReachMm } from '../cut/vee-depth.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfRings } from './places.ts';

/** The tip covers a smaller floor in a few rounds, mm² (our choice: a square of 2 mm). */
const MIN_FLOOR_MM2 = 4;
/** The tip covers a narrower floor in a round or two, mm (our choice). */
const NARROW_FLOOR_MM = 1;
/** Thickness of a board that is not described, mm: three quarters of an inch (common practice). */
const USUAL_BOARD_MM = mmFromInches(0.75);
/** Share of the floor that a flat bit must clear to be offered (our choice). */
const WORTHWHILE = 0.8;

/** Level floor at the depth limit that only the point of a V passes over: it leaves ridges, not a floor. */
export const floorLeftRidged: Check = {
  code: 'floor-left-ridged',
  run: (measured) => {
    const { carving, shape } = measured;
    // how fine the ridges of a ball are depends on the stepover, which the maker chooses
    if (shape.includedRad === null || carving.scallopedFloorMm2 < MIN_FLOOR_MM2) {
      return null;
    }
    const floor = floorOf(measured);
    const axis = medialAxis(floor);
    const swept = carving.floorAreaMm2 - carving.scallopedFloorMm2;
    const ridged = openedArea(axis, NARROW_FLOOR_MM / 2) - swept;
    if (ridged < MIN_FLOOR_MM2) {
      return null;
    }
    return {
      code: 'floor-left-ridged',
      severity: 'caution',
      where: outlinesOf(floor).map((ring) =>
        placeOfRings([ring[0] ?? 0, ring[1] ?? 0], packRings([ring]), {
          what: 'floor',
          areaMm2: ringArea(ring, 0, ring.length / 2),
        }),
      ),
      measured: { value: ridged, quantity: 'area', unit: 'mm²' },
      limit: { value: MIN_FLOOR_MM2, quantity: 'area', unit: 'mm²' },
      because: ['opening-by-disc', 'own-inference'],
      fix: { options: fixes(measured, axis) },
    };
  },
};

function floorOf({ carving, job }: Measured): CleanRegion {
  const floor = polygonFromArcs(carving.sliceOutline(carving.maxDepthMm), job.toleranceMm);
  return resolveRegions([{ ...floor, fillRule: 'nonzero' }]).region;
}

/** The outer outlines of a region that are not specks, largest first. */
function outlinesOf(region: CleanRegion): readonly Float64Array[] {
  const size = (ring: Float64Array): number => ringArea(ring, 0, ring.length / 2);
  return Array.from(region.ringEnds, (_, k) => ringCoords(region, k))
    .filter((ring) => size(ring) > NARROW_FLOOR_MM ** 2)
    .toSorted((a, b) => size(b) - size(a));
}

/** The widest flat bit that clears most of the floor, and the depth at which there is no floor. */
function fixes(measured: Measured, floorAxis: MedialAxis): Fix[] {
  const { job, carving } = measured;
  const options: Fix[] = [];
  const most = 2 * floorAxis.nodeR.reduce((widest, r) => Math.max(widest, r), 0);
  for (const diameter of flatBitsBelow(most, job.units, job.materials.cutters)) {
    const share = openedArea(floorAxis, diameter / 2) / carving.floorAreaMm2;
    if (share >= WORTHWHILE) {
      options.push({
        do: 'use-bit',
        kind: 'flat',
        diameterMm: diameter,
        floorSharePct: Math.floor(share * 100),
        clears: (1 - share) * carving.floorAreaMm2 < MIN_FLOOR_MM2,
      });
      break;
    }
  }
  const deeper = deepenTo(measured);
  if (deeper !== null) {
    options.push({
      do: 'deepen',
      byMm: Math.ceil((deeper - job.depthMm) * 100) / 100,
      clears: true,
    });
  }
  return options;
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
