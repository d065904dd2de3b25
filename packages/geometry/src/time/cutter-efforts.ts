import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { clearingPath } from '../paths/clearing-path.ts';
import type { CutterPath } from '../paths/cutter-path.ts';
import { type Following, followingPath } from '../paths/following-path.ts';
import { equalPasses, inPasses } from '../paths/in-passes.ts';
import { type CuttingTime, cuttingTime } from './cutting-time.ts';
import { COMMON_SHARES, type Machine } from './machine.ts';

/** What a cutter clears: as far as it reaches, at one depth, but for what the narrowest before it took. */
export interface ClearingTask {
  readonly way: 'clear';
  /** Width of the cutter at the face, mm, above 0. */
  readonly widthMm: number;
  /** Floor below the face, mm, above 0. */
  readonly depthMm: number;
  /** Width of its tip, which sets the distance between rounds, mm; as wide as at the face by default. */
  readonly tipMm?: number;
  /** Distance between rounds, as a share of the narrower of tip and width; 0.4 by default (common practice, no source). */
  readonly stepoverShare?: number;
  /** Most depth taken in one pass, mm; half the width by default (common practice, no source). */
  readonly deepestPassMm?: number;
}

/** What a V follows: the middle of all strokes, as deep as they allow. */
export interface FollowingTask extends Following {
  readonly way: 'follow';
  /** Diameter of the cutter, mm, above 0. */
  readonly diameterMm: number;
  /** Most depth taken in one pass, mm; half the diameter by default (common practice, no source). */
  readonly deepestPassMm?: number;
}

/** Where cutters work: each on the axis of what it is to cut. */
export interface WorkAxes {
  /** Of all that is cleared: the artwork, or the level floor that a V leaves. */
  readonly clear: MedialAxis;
  readonly follow: MedialAxis;
}

/** What one cutter costs. */
export interface CutterEffort {
  /** Length of its moves in the wood over all passes, mm. */
  readonly pathMm: number;
  readonly passes: number;
  readonly minutes: number;
  readonly time: CuttingTime;
}

/**
 * For each cutter, in the order of use, its path and time. A clearing cutter takes just what the narrowest before it left; one that has nothing to do has
 * no path and takes no time.
 *
 * @param given values of the machine that are known
 * @throws {RangeError} when a size or a value of the machine is out of range
 */
export function cutterEfforts(
  axes: WorkAxes,
  tasks: readonly (ClearingTask | FollowingTask)[],
  given: Partial<Machine> = {},
): readonly CutterEffort[] {
  let narrowestMm = 0;
  return tasks.map((task) => {
    const { path, passes } =
      task.way === 'follow' ? followed(axes.follow, task) : cleared(axes.clear, task, narrowestMm);
    if (task.way === 'clear') {
      narrowestMm = narrowestMm === 0 ? task.widthMm : Math.min(narrowestMm, task.widthMm);
    }
    const time = cuttingTime(path, given);
    return {
      pathMm: time.cutMm,
      passes: path.runEnds.length === 0 ? 0 : passes,
      minutes: time.minutes,
      time,
    };
  });
}

/** A path over all passes, and how many there are. */
interface Work {
  readonly path: CutterPath;
  readonly passes: number;
}

function cleared(axis: MedialAxis, task: ClearingTask, earlierDiameterMm: number): Work {
  const { widthMm, depthMm, tipMm = widthMm, stepoverShare = COMMON_SHARES.stepover } = task;
  const { deepestPassMm = COMMON_SHARES.pass * widthMm } = task;
  const stepoverMm = stepoverShare * Math.min(tipMm, widthMm);
  return {
    path: clearingPath(axis, { diameterMm: widthMm, stepoverMm, depthMm, deepestPassMm, earlierDiameterMm }),
    passes: equalPasses(depthMm, deepestPassMm).length,
  };
}

function followed(axis: MedialAxis, task: FollowingTask): Work {
  const { diameterMm, deepestPassMm = COMMON_SHARES.pass * diameterMm } = task;
  const { path } = followingPath(axis, task);
  const depths = equalPasses(greatestDepth(path), deepestPassMm);
  return { path: inPasses(path, depths), passes: depths.length };
}

/** A V stays above its limit where no stroke is wide enough. */
function greatestDepth({ points }: CutterPath): number {
  let most = 0;
  for (let i = 2; i < points.length; i += 3) {
    most = Math.max(most, points[i]);
  }
  return most;
}
