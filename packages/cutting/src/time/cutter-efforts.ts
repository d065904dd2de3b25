import type { MedialAxis } from '@pourproof/geometry';
import { clearingPath } from '../paths/clearing/clearing-path.ts';
import type { CutterPath } from '../paths/cutter-path.ts';
import { type Following, followingPath } from '../paths/following/following-path.ts';
import { equalPasses, inPasses } from '../paths/in-passes.ts';
import { type CuttingTime, cuttingTime } from './cutting-time.ts';
import { crossingsOf, estimatedPath, MOST_CROSSINGS } from './estimated-clearing.ts';
import { COMMON_SHARES, type Machine } from './machine.ts';

/** A clearing: all that the cutter reaches at one depth, save what earlier cutters took. */
export interface ClearingTask {
  readonly way: 'clear';
  /** Width of the cutter at the face, mm, above 0. */
  readonly widthMm: number;
  /** Depth of the floor below the face, mm, above 0. */
  readonly depthMm: number;
  /** Width of its tip, which sets the stepover, mm; that at the face by default. */
  readonly tipMm?: number;
  /** Stepover as a share of the narrower of tip and width; 0.4 by default (common practice, no source). */
  readonly stepoverShare?: number;
  /** Greatest depth of a pass, mm; half the width by default (common practice, no source). */
  readonly deepestPassMm?: number;
}

/** What a V follows: all strokes, as deep as they allow. */
export interface FollowingTask extends Following {
  readonly way: 'follow';
  /** Diameter of the cutter, mm, above 0. */
  readonly diameterMm: number;
  /** Greatest depth of a pass, mm; half the diameter by default (common practice, no source). */
  readonly deepestPassMm?: number;
}

/** The medial axes of what the cutters have to cut. */
export interface WorkAxes {
  /** Of what is cleared: the artwork, or the level floor that a V leaves. */
  readonly clear: MedialAxis;
  readonly follow: MedialAxis;
}

/** What one cutter takes. */
export interface CutterEffort {
  /** Length of its moves in the wood in all passes, mm. */
  readonly pathMm: number;
  readonly passes: number;
  readonly minutes: number;
  readonly time: CuttingTime;
  /** Whether path and time follow from area and outline, because there is too much to plan. */
  readonly isEstimated: boolean;
}

/**
 * Path length and time of each cutter, in the order of use. At each depth a clearing cutter takes only what
 * the narrowest earlier one that went as deep has left; one that has nothing to do takes no time.
 *
 * @example
 * const clear = { way: 'clear', widthMm: 3.175, depthMm: 3 } as const;
 * const [effort] = cutterEfforts({ clear: axis, follow: axis }, [clear], { feedMmPerMin: 1200 });
 * effort?.minutes;
 *
 * @param given known values of the machine
 * @param mostCrossings how much is planned at most; the time of a larger clearing is estimated
 * @throws {RangeError} when a size or a value of the machine is out of range
 */
export function cutterEfforts(
  axes: WorkAxes,
  tasks: readonly (ClearingTask | FollowingTask)[],
  given: Partial<Machine> = {},
  mostCrossings: number = MOST_CROSSINGS,
): readonly CutterEffort[] {
  const earlier: ClearingTask[] = [];
  return tasks.map((task) => {
    const { path, passes, isEstimated } =
      task.way === 'follow'
        ? followed(axes.follow, task)
        : cleared(axes.clear, task, { earlier, mostCrossings });
    if (task.way === 'clear') {
      earlier.push(task);
    }
    const time = cuttingTime(path, given);
    return { pathMm: time.cutMm, passes, minutes: time.minutes, time, isEstimated };
  });
}

/** A path in all passes, and their number. */
interface Work {
  readonly path: CutterPath;
  readonly passes: number;
  readonly isEstimated: boolean;
}

function cleared(
  axis: MedialAxis,
  task: ClearingTask,
  { earlier, mostCrossings }: { readonly earlier: readonly ClearingTask[]; readonly mostCrossings: number },
): Work {
  const { widthMm, depthMm, tipMm = widthMm, stepoverShare = COMMON_SHARES.stepover } = task;
  const { deepestPassMm = COMMON_SHARES.pass * widthMm } = task;
  const stepoverMm = stepoverShare * Math.min(tipMm, widthMm);
  const works = bandsAfter(earlier, depthMm).map(({ fromMm, toMm, earlierMm }): Work => {
    const wideMm = earlierMm === 0 ? Infinity : earlierMm / 2;
    if (crossingsOf(axis, widthMm / 2, stepoverMm, wideMm) > mostCrossings) {
      const depths = equalPasses(toMm - fromMm, deepestPassMm).map((pass) => fromMm + pass);
      const path = estimatedPath(axis, { radiusMm: widthMm / 2, stepoverMm }, depths, earlierMm === 0);
      return { path, passes: depths.length, isEstimated: true };
    }
    const path = clearingPath(axis, {
      diameterMm: widthMm,
      stepoverMm,
      openDepthMm: fromMm,
      depthMm: toMm,
      deepestPassMm,
      earlierDiameterMm: earlierMm,
    });
    return { path, passes: passesOf(path, toMm - fromMm, deepestPassMm), isEstimated: false };
  });
  return {
    path: joined(works.map(({ path }) => path)),
    passes: works.reduce((sum, { passes }) => sum + passes, 0),
    isEstimated: works.some(({ isEstimated }) => isEstimated),
  };
}

/** Depths between which the same earlier cutters were used. */
interface DepthBand {
  readonly fromMm: number;
  readonly toMm: number;
  /** Width of the narrowest of them, mm; 0 for none. */
  readonly earlierMm: number;
}

function bandsAfter(earlier: readonly ClearingTask[], depthMm: number): readonly DepthBand[] {
  const ends = [...new Set(earlier.map((task) => Math.min(task.depthMm, depthMm))), depthMm];
  const bands: DepthBand[] = [];
  for (const toMm of [...new Set(ends)].sort((a, b) => a - b)) {
    const widths = earlier.filter((task) => task.depthMm >= toMm).map((task) => task.widthMm);
    const earlierMm = widths.length === 0 ? 0 : Math.min(...widths);
    // merge bands with the same narrowest cutter
    const above = bands.at(-1)?.earlierMm === earlierMm ? bands.pop() : undefined;
    bands.push({ fromMm: above?.fromMm ?? bands.at(-1)?.toMm ?? 0, toMm, earlierMm });
  }
  return bands;
}

function joined(paths: readonly CutterPath[]): CutterPath {
  const [first] = paths;
  if (paths.length === 1) {
    return first;
  }
  let count = 0;
  const runEnds = paths.flatMap((path) => {
    const ends = Array.from(path.runEnds, (end) => count + end);
    count += path.bulges.length;
    return ends;
  });
  return {
    points: Float64Array.from(paths.flatMap(({ points }) => [...points])),
    bulges: Float64Array.from(paths.flatMap(({ bulges }) => [...bulges])),
    runEnds: Uint32Array.from(runEnds),
  };
}

function followed(axis: MedialAxis, task: FollowingTask): Work {
  const { diameterMm, deepestPassMm = COMMON_SHARES.pass * diameterMm } = task;
  const { path } = followingPath(axis, task);
  const deepestMm = greatestDepth(path);
  const passes = passesOf(path, deepestMm, deepestPassMm);
  return { path: inPasses(path, equalPasses(deepestMm, deepestPassMm)), passes, isEstimated: false };
}

/** A path without runs has no passes. */
function passesOf({ runEnds }: CutterPath, depthMm: number, deepestPassMm: number): number {
  return runEnds.length === 0 ? 0 : equalPasses(depthMm, deepestPassMm).length;
}

/** A V stays above its depth limit where no stroke is wide enough. */
function greatestDepth({ points }: CutterPath): number {
  let most = 0;
  for (let i = 2; i < points.length; i += 3) {
    most = Math.max(most, points[i]);
  }
  return most;
}
