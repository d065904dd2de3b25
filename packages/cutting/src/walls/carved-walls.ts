import type { MedialAxis } from '@pourproof/geometry';
import { ClearingCut } from '../clearing/clearing-cut.ts';
import type { Carving } from '../cut/carving.ts';
import { CutUnion, type WallBand } from '../cut/cut-union.ts';
import { profileChords } from '../cutters/profile-chords.ts';
import { RoundedTipCut } from '../following/rounded-tip-cut.ts';
import { StraightFlankCut } from '../following/straight-flank-cut.ts';
import { reachedOutline } from '../slices/reached-outline.ts';
import { addFollowingWalls } from './following-walls.ts';
import { addLevelCells } from './level-cells.ts';
import { addOutlineWalls } from './outline-walls.ts';
import { type CarvedWalls, type FibreSetting, WallCollector } from './wall-collector.ts';

/** Chords for one arc of a clearing cutter's profile: its walls come out too small by 4e-4 of their area. */
const CHORDS_PER_ARC = 16;

/** Fibre direction, and size of elements. */
export interface CarvedWallOptions extends FibreSetting {
  /**
   * Larger walls and floors are divided into elements of about this size, mm, so that each lies in one block
   * of the board. Not divided by default.
   */
  readonly longestMm?: number;
}

/**
 * All surfaces of a cut in three dimensions, with area and mean end-grain exposure of each element. Elements
 * and their order do not depend on the fibre. Exact for upright walls, flanks of following cutters and level
 * floors; an arc of a profile is taken as a few chords; the surface that a rounded tip leaves along the axis
 * is taken from the contacts' own normals.
 *
 * @example
 * const walls = carvedWalls(cut, { grainRad: 0, longestMm: 2 });
 * walls.exposedMm2 / walls.areaMm2; // share of end grain
 *
 * @throws {RangeError} when the dive is out of −π/2 … π/2 or `longestMm` not above 0
 */
export function carvedWalls(carving: Carving, options: CarvedWallOptions): CarvedWalls {
  const { longestMm = Infinity } = options;
  if (!(longestMm > 0)) {
    throw new RangeError(`longestMm is ${longestMm}; give a number of millimetres above 0`);
  }
  const walls = new WallCollector(options);
  const union = new CutUnion(carving.stepCuts, carving.toleranceMm);
  for (const band of union.wallBands()) {
    const { topMm, bottomMm, container } = band;
    if (container instanceof StraightFlankCut || container instanceof RoundedTipCut) {
      addFollowingWalls(walls, carving.axis, container, { depthsMm: [topMm, bottomMm], longestMm });
    } else if (container instanceof ClearingCut) {
      addClearWalls(
        walls,
        carving.axis,
        container,
        [container.depthMm - bottomMm, container.depthMm - topMm],
        longestMm,
      );
    } else {
      addMeanWalls(walls, union, band, longestMm);
    }
  }
  addFloors(walls, carving, longestMm);
  return walls.collected();
}

/** Adds the walls that a clearing cutter leaves between two heights above its tip. */
function addClearWalls(
  walls: WallCollector,
  axis: MedialAxis,
  { cutter, depthMm, slices }: ClearingCut,
  [low, high]: readonly [number, number],
  longestMm: number,
): void {
  const { centreMm } = slices;
  for (const chord of profileChords(cutter, depthMm, CHORDS_PER_ARC)) {
    const { fromHeightMm, toHeightMm, fromRadiusMm, toRadiusMm, leanRad } = chord;
    const from = Math.max(low, fromHeightMm);
    const to = Math.min(high, toHeightMm);
    if (fromHeightMm === toHeightMm && fromHeightMm > Math.max(low, 0) && fromHeightMm < high) {
      addLevelCells(walls, axis, { centreMm, reachMm: toRadiusMm, butMm: fromRadiusMm, longestMm });
    } else if (to > from) {
      const gain = (toRadiusMm - fromRadiusMm) / (toHeightMm - fromHeightMm);
      const middle = fromRadiusMm + gain * ((from + to) / 2 - fromHeightMm);
      const outline = reachedOutline(axis, centreMm, Math.min(centreMm, middle));
      addOutlineWalls(walls, outline, { leanRad, slantMm: (to - from) / Math.cos(leanRad), longestMm });
    }
  }
}

/** Adds the walls of a thin band of joined slices, along the outline at its middle. */
function addMeanWalls(
  walls: WallCollector,
  union: CutUnion,
  { topMm, bottomMm, leanRad }: WallBand,
  longestMm: number,
): void {
  const outline = union.sliceOutline((topMm + bottomMm) / 2);
  addOutlineWalls(walls, outline, { leanRad, slantMm: (bottomMm - topMm) / Math.cos(leanRad), longestMm });
}

/** Adds the deepest floor, and the level ledges above it. */
function addFloors(
  walls: WallCollector,
  { axis, stepCuts, depthLimitMm, floorAreaMm2, ledgeAreaMm2 }: Carving,
  longestMm: number,
): void {
  const stops = [...new Set(stepCuts.map((cut) => cut.depthMm))].sort((a, b) => b - a);
  for (const stop of stops) {
    const isDeepest = stop === depthLimitMm;
    const [{ reach }] = stepCuts
      .filter((cut) => cut.depthMm === stop)
      .map((cut) => ({ reach: cut.reachAt(stop), areaMm2: cut.sliceArea(stop).value }))
      .sort((a, b) => b.areaMm2 - a.areaMm2);
    addLevelCells(walls, axis, {
      ...reach,
      totalMm2: isDeepest ? floorAreaMm2 : ledgeAreaMm2 / (stops.length - 1),
      longestMm,
    });
  }
}
