export { type BooleanOperation, booleans } from './boolean/booleans.ts';
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
export { erodedArea } from './measure/eroded-area.ts';
export { fibreVector } from './measure/fibre-vector.ts';
export { endGrainLength } from './measure/grain-length.ts';
export { type NarrowStretch, narrowStretches } from './measure/narrow-stretches.ts';
export { openedArea } from './measure/opened-area.ts';
export { profileVolume, reachedArea } from './measure/profile-volume.ts';
export { type StrokeLine, strokeLines } from './measure/stroke-lines.ts';
export { type StrokeWidths, strokeWidths } from './measure/stroke-widths.ts';
export { type VCut, vDepth, vVolume } from './measure/v-volume.ts';
export { type WallElements, type WallSetting, wallElements } from './measure/wall-elements.ts';
export { type WallRun, type WallRunOptions, wallRuns } from './measure/wall-runs.ts';
export { type MedialAxis, medialAxis } from './medial-axis/medial-axis.ts';
export { type ArcRings, arcRingsArea, polygonFromArcs } from './outline/arc-rings.ts';
export { leftStanding, type StandingPiece } from './outline/left-standing.ts';
export { openedOutline } from './outline/opened-outline.ts';
export { outsideOf } from './outline/outside-of.ts';
export { type Clearing, clearingPath } from './paths/clearing-path.ts';
export { type CutterPath, pathLength } from './paths/cutter-path.ts';
export { erodedOutline } from './paths/eroded-outline.ts';
export { type Following, type FollowingPath, followingPath } from './paths/following-path.ts';
export { equalPasses, inPasses } from './paths/in-passes.ts';
export type { Crossing } from './resolve/crossing-log.ts';
export type { DoubledRing } from './resolve/doubled-rings.ts';
export { type Resolved, type ResolveOptions, resolveRegions, type Speck } from './resolve/resolve-regions.ts';
export { holeCount, outerRingCount } from './resolve/ring-counts.ts';
export { type SweptBand, sweepAlong } from './sweep/sweep-along.ts';
export { type SweepTouch, sweepTouches } from './sweep/sweep-touches.ts';
export {
  type ClearingTask,
  type CutterEffort,
  cutterEfforts,
  type FollowingTask,
  type WorkAxes,
} from './time/cutter-efforts.ts';
export { type CuttingTime, cuttingTime } from './time/cutting-time.ts';
export { type Assumption, COMMON_SHARES, type Machine, SMALL_ROUTER } from './time/machine.ts';
