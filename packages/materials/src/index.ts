export {
  type BleedClass,
  type BleedJob,
  type BleedTravel,
  bleedClass,
  bleedTravel,
  visibleProbability,
} from './bleed-travel.ts';
export {
  type Capillary,
  capillaryLengthMm,
  capillaryPressurePa,
  closedVesselLengthMm,
  referenceCapillary,
} from './capillary.ts';
export { type CautionId, cautions, oilCleaning } from './cautions.ts';
export type { Cited, CitedRange, Origin, Status } from './cited.ts';
export { ciede2000, type Lab } from './colour-difference.ts';
export { type CutterShape, type CutterSize, cutterSizes } from './cutter.ts';
export { fluidity, type ViscosityLaw } from './fluidity.ts';
export { type Limit, type LimitId, type LimitUnit, limits } from './limits.ts';
export { type FillVolume, type Mix, mixByMass } from './mix-by-mass.ts';
export { type MixRatio, type Resin, type ResinId, resins } from './resin.ts';
export { cureSpeed, openTubeLimitMm, resinLaw } from './resin-flow.ts';
export { sealFactor } from './seal-factor.ts';
export { type SealCurePoint, type Sealer, type SealId, sealers } from './sealer.ts';
export { type Source, type SourceId, sources } from './sources.ts';
export { type Wood, type WoodId, woodSources, woods } from './wood.ts';
export type { Movement } from './wood-movement.ts';
export type { Pores, Porosity } from './wood-pores.ts';
export type { Strength } from './wood-strength.ts';
