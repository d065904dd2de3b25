export { type BooleanOperation, booleans } from './boolean/booleans.ts';
export { fibreVector } from './measure/fibre-vector.ts';
export { endGrainLength } from './measure/grain-length.ts';
export { type WallRun, type WallRunOptions, wallRuns } from './measure/wall-runs.ts';
export type { Crossing } from './resolve/crossing-log.ts';
export type { DoubledRing } from './resolve/doubled-rings.ts';
export { type Resolved, type ResolveOptions, resolveRegions, type Speck } from './resolve/resolve-regions.ts';
export { holeCount, outerRingCount } from './resolve/ring-counts.ts';
export { type SweptBand, sweepAlong } from './sweep/sweep-along.ts';
