export {
  type BleedClass,
  type BleedJob,
  type BleedTravel,
  bleedClass,
  bleedClassEndsMm,
  bleedTravel,
  NORMAL_95_QUANTILE,
  spreadBetweenBoards,
  spreadWithinBoard,
  visibleProbability,
} from './bleed-travel.ts';
export type { Band } from './calibration/board-fit.ts';
export {
  type CalibratedTravel,
  calibratedTravel,
  surprise,
  varianceShares,
} from './calibration/calibrated-travel.ts';
export type { Coupon, CouponReading } from './calibration/coupon.ts';
export { type CautionId, cautions } from './cautions.ts';
export type { Cited, CitedRange, Origin, Status } from './cited.ts';
export { ciede2000, type Lab } from './colour-difference.ts';
export { type CutterShape, type CutterSize, cutterSizes } from './cutter.ts';
export { defaultFields } from './default-fields.ts';
export { endGrainUptakeMl } from './end-grain-uptake.ts';
export { largestMixG } from './largest-mix.ts';
export { type LevelMethod, type LevelMethodId, levelMethods, veeWidthLossMm } from './levelling.ts';
export { type Limit, type LimitId, type LimitUnit, limits } from './limits.ts';
export { defaultMaterials, type MaterialsBook, rowsAtHandFirst } from './materials-book.ts';
export { MaterialsError } from './materials-error.ts';
export type { MaterialsErrorCode } from './materials-faults.ts';
export type {
  MaterialsOverrides,
  ResinEntry,
  ScaleEntry,
  SealerEntry,
  WoodEntry,
} from './materials-overrides.ts';
export { mergeMaterials } from './merge-materials.ts';
export { type MistakenRatio, mistakenRatio } from './mistaken-ratio.ts';
export { type AssumedDensity, type FillVolume, type Mix, mixByMass } from './mix-by-mass.ts';
export { type OilCleaningStepId, oilCleaning } from './oil-cleaning.ts';
export { type Colourant, type Opacity, opacityOf } from './opacity.ts';
export { paintHex, paintLab, plainColourWord } from './paint-colour.ts';
export { type PourLayers, pourLayers } from './pour-layers.ts';
export {
  defaultDensityA,
  defaultDensityB,
  type MixRatio,
  type Resin,
  type ResinId,
  resins,
} from './resin.ts';
export { type ResinColourId, resinColours } from './resin-colour.ts';
export { cureSpeed } from './resin-flow.ts';
export { type SealFilm, sealerMassG, sealFilm } from './seal-film.ts';
export { type SealCurePoint, type Sealer, type SealId, sealers } from './sealer.ts';
export { shopAdvice } from './shop-advice.ts';
export { type ShopHoursJob, type ShopWait, type ShopWaitId, shopHours } from './shop-hours.ts';
export { type Scale, type ScaleId, scales, smallestBatchG, type Weighing } from './smallest-batch.ts';
export { smallCupMm, smallestTrueMixG, unmixedFilmMm } from './smallest-true-mix.ts';
export { type Source, type SourceId, sources } from './sources.ts';
export { bleedIndex, streakDifference } from './streak-visibility.ts';
export { type Wood, type WoodId, woods } from './wood.ts';
export type { Pores, Porosity } from './wood-pores.ts';
