export { carve } from './cut/carve.ts';
export type { CarveOptions, CarveStep, Carving, StepAddition } from './cut/carving.ts';
export { type Cutter, type CutterShape, heightAt, type ProfilePiece, radiusAt } from './cutters/cutter.ts';
export {
  ballCutter,
  bullNoseCutter,
  type CutterLimits,
  flatCutter,
  profileCutter,
  type TaperedBallSizes,
  taperedBallCutter,
  type VeeSizes,
  veeCutter,
} from './cutters/cutter-makers.ts';
export {
  type FlankMoments,
  flankMoments,
  type HeightMoments,
  heightMoments,
} from './cutters/profile-moments.ts';
export { type Clearing, clearingPath } from './paths/clearing/clearing-path.ts';
export type { CutterPath } from './paths/cutter-path.ts';
export { type Following, type FollowingPath, followingPath } from './paths/following/following-path.ts';
export { equalPasses, inPasses } from './paths/in-passes.ts';
export { reachedOutline } from './slices/reached-outline.ts';
export {
  type ClearingTask,
  type CutterEffort,
  cutterEfforts,
  type FollowingTask,
  type WorkAxes,
} from './time/cutter-efforts.ts';
export { type CuttingTime, cuttingTime } from './time/cutting-time.ts';
export { type Assumption, COMMON_SHARES, type Machine, SMALL_ROUTER } from './time/machine.ts';
export { type CarvedWallOptions, carvedWalls } from './walls/carved-walls.ts';
export type { CarvedWalls, FibreSetting } from './walls/wall-collector.ts';
