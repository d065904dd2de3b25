import type { Point } from '@pourproof/plane';
import { newPlaces } from '../carve/new-places.ts';
import { openedArea } from '../measure/opened-area.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { clearingPath } from '../paths/clearing-path.ts';
import { equalPasses } from '../paths/in-passes.ts';
import { type CuttingTime, cuttingTime } from './cutting-time.ts';
import { COMMON_SHARES, type Machine } from './machine.ts';

/** A flat cutter and how hard it is worked. */
export interface FlatCutter {
  /** mm, above 0. */
  readonly diameterMm: number;
  /** Distance between rounds, mm; 40 % of the diameter by default (common practice, no source). */
  readonly stepoverMm?: number;
  /** Most depth taken in one pass, mm; half the diameter by default (common practice, no source). */
  readonly deepestPassMm?: number;
}

/** What one cutter adds to those before it, and what that costs. */
export interface CutterEffort {
  readonly diameterMm: number;
  /** Area that it takes and none before it took, mm². */
  readonly areaMm2: number;
  /** A point of each separate piece of that area. */
  readonly places: readonly Point[];
  /** Length of its moves in the wood over all passes, mm. */
  readonly pathMm: number;
  readonly passes: number;
  readonly minutes: number;
  readonly time: CuttingTime;
}

/**
 * For each flat cutter, in the order of use, the area that it adds, in which places, and the path and time for it at one depth. A cutter clears just
 * what the narrowest before it left; one that adds nothing has no path and takes no time.
 *
 * @param depthMm floor below the face, above 0
 * @param given values of the machine that are known
 * @throws {RangeError} when a size or a value of the machine is out of range
 */
export function cutterEffort(
  axis: MedialAxis,
  cutters: readonly FlatCutter[],
  depthMm: number,
  given: Partial<Machine> = {},
): readonly CutterEffort[] {
  let narrowest = Infinity;
  return cutters.map((cutter) => {
    const { diameterMm, stepoverMm = COMMON_SHARES.stepover * diameterMm } = cutter;
    const { deepestPassMm = COMMON_SHARES.pass * diameterMm } = cutter;
    const passes = equalPasses(depthMm, deepestPassMm).length;
    const earlier = narrowest === Infinity ? {} : { earlierDiameterMm: narrowest };
    const path = clearingPath(axis, { diameterMm, stepoverMm, depthMm, deepestPassMm, ...earlier });
    const time = cuttingTime(path, given);
    const before = narrowest;
    const isAdding = diameterMm < before;
    narrowest = Math.min(narrowest, diameterMm);
    return {
      diameterMm,
      areaMm2: isAdding
        ? openedArea(axis, diameterMm / 2) - (before < Infinity ? openedArea(axis, before / 2) : 0)
        : 0,
      places: isAdding ? newPlaces(axis, diameterMm / 2, before / 2) : [],
      pathMm: time.cutMm,
      passes: path.runEnds.length === 0 ? 0 : passes,
      minutes: time.minutes,
      time,
    };
  });
}
