export { carve } from './carve/carve.ts';
export { type CarvedWallOptions, carvedWalls } from './carve/carved-walls.ts';
export type { CarveOptions, CarveStep, Carving, StepAddition } from './carve/carving.ts';
export { type Cutter, type CutterShape, heightAt, type ProfilePiece, radiusAt } from './carve/cutter.ts';
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
} from './carve/cutter-makers.ts';
export {
  type FlankMoments,
  flankMoments,
  type HeightMoments,
  heightMoments,
} from './carve/profile-moments.ts';
export { reachedOutline } from './carve/reached-outline.ts';
export type { CarvedWalls, FibreSetting } from './carve/wall-collector.ts';
export { type Clearing, clearingPath } from './paths/clearing-path.ts';
export { type CutterPath, pathLength } from './paths/cutter-path.ts';
export { erodedOutline } from './paths/eroded-outline.ts';
export { type Following, type FollowingPath, followingPath } from './paths/following-path.ts';
export { equalPasses, inPasses } from './paths/in-passes.ts';
export {
  type ClearingTask,
  type CutterEffort,
  cutterEfforts,
  type FollowingTask,
  type WorkAxes,
} from './time/cutter-efforts.ts';
export { type CuttingTime, cuttingTime } from './time/cutting-time.ts';
export { type Assumption, COMMON_SHARES, type Machine, SMALL_ROUTER } from './time/machine.ts';
