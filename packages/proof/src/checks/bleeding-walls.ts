import { limits } from '@pourproof/materials';
import type { Point } from '@pourproof/plane';
import type { BlockMeasures } from '../board/block-measures.ts';
import { blockWallRuns, type WallEdge } from '../board/block-wall-runs.ts';
import { lengthOf } from './places.ts';

/** Walls at risk closer together than this are reported as one place, mm (our choice). */
const JOIN_MM = 0.5;

/** A stretch of wall of one block from which colour is likely to stain the wood so far and so wide that it is seen. */
export interface BleedingWall {
  readonly path: Float64Array;
  readonly atMm: Point;
  readonly lengthMm: number;
  /** How far colour is likely to run from all of a stretch that is wide enough to be seen. */
  readonly reachMm: number;
  readonly inBlock: BlockMeasures;
}

/**
 * The stretches of wall in a block from which colour is likely to run `fromMm` or more. A stretch counts by the reach that it keeps over
 * the width of a visible stain, not by its worst point.
 *
 * @param leanRad angle of the walls from the vertical at the face
 */
export function bleedingWalls(
  inBlock: BlockMeasures,
  leanRad: number,
  fromMm: number,
): readonly BleedingWall[] {
  const { medianMm } = inBlock.travel;
  if (medianMm < fromMm) {
    return [];
  }
  return blockWallRuns(inBlock, leanRad, {
    minExposure: fromMm / medianMm,
    joinGapMm: JOIN_MM,
    minLengthMm: limits.visibleStretch.value,
  }).flatMap(({ path, atMm, edges }) => {
    // the two ends of a small shape are one stretch, but not one stain
    const reachMm = Math.max(
      keptReachMm(
        edges.filter(({ isAhead }) => isAhead),
        medianMm,
      ),
      keptReachMm(
        edges.filter(({ isAhead }) => !isAhead),
        medianMm,
      ),
    );
    return reachMm < fromMm ? [] : [{ path, atMm, lengthMm: lengthOf(path), reachMm, inBlock }];
  });
}

/** Digits of a reach: what rounding of a turned wall takes off is no less. */
const REACH_DIGITS = 12;

/** The largest reach that edges together wide and long enough for a visible stain all have; 0 where they are not. */
function keptReachMm(edges: readonly WallEdge[], medianMm: number): number {
  let widthMm = 0;
  let stainMm2 = 0;
  for (const { exposure, acrossMm } of edges.toSorted((a, b) => b.exposure - a.exposure)) {
    widthMm += acrossMm;
    stainMm2 += acrossMm * exposure * medianMm;
    if (widthMm >= limits.visibleStretch.value && stainMm2 >= limits.visibleStain.value) {
      return Number((medianMm * exposure).toPrecision(REACH_DIGITS));
    }
  }
  return 0;
}
