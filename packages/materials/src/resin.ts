import { type Cited, type CitedRange, cited, citedRange } from './cited.ts';

/** Id of a resin class that ships with pourproof. */
export type ResinId = 'coating' | 'laminating' | 'deep-pour';

/** Parts A to parts B, both above 0. */
export interface MixRatio {
  readonly a: number;
  readonly b: number;
}

/**
 * A two-part epoxy. Values are class defaults; the label of the resin at hand comes first. All at 25 °C.
 *
 * A ratio may be given by volume, by weight or both; where both are given the one by weight is used.
 */
export interface Resin {
  readonly name: string;
  /** Viscosity just mixed, in Pa·s. */
  readonly viscosityPaS: CitedRange;
  /** Minutes that 100 g in a cup stay workable. */
  readonly potLifeMin: CitedRange;
  /**
   * Minutes to gel as a thin layer in the cut: the clock of colour travel. A cup of 100 g heats itself and sets long before; where only
   * its pot life is known see `thinGel`.
   */
  readonly gelMin: CitedRange;
  /** Hours between which a further pour of the same resin bonds without sanding. */
  readonly tackyHours: CitedRange;
  /** Hours until sanding and planing. */
  readonly hardHours: CitedRange;
  /** Days until fully cured. */
  readonly fullCureDays: CitedRange;
  readonly ratioByVolume: Cited<MixRatio> | null;
  readonly ratioByWeight: Cited<MixRatio> | null;
  /** Ratio by volume that is usual for the class, kept when a label's ratio replaces it. */
  readonly usualRatioByVolume: Cited<MixRatio> | null;
  /** How far the ratio may be off, in percent, before the cure suffers. */
  readonly ratioTolerancePct: Cited;
  /** Density of part A in g/ml; `null` if unknown. */
  readonly densityAGPerMl: Cited | null;
  /** Density of part B in g/ml; `null` if unknown. */
  readonly densityBGPerMl: Cited | null;
  /** Density of the mix in g/ml. */
  readonly densityMixedGPerMl: CitedRange;
  /** Deepest single pour in mm: `low` is what cautious makers give, `value` the usual limit. */
  readonly deepestPourMm: CitedRange;
  /** Most that may be mixed in one cup at 25 °C, in g: `low` is what cautious makers give. A fuller cup heats itself until it smokes. */
  readonly largestMixG: CitedRange;
  /** Coldest shop in which it cures well, °C. */
  readonly minTempC: CitedRange;
  /** Warmest shop in which it can be poured, °C. */
  readonly maxTempC: CitedRange;
  /** Loss of volume on curing in percent. */
  readonly shrinkagePct: CitedRange;
}

/** Density of part A in g/ml of an epoxy whose label is not at hand. */
export const defaultDensityA: CitedRange = citedRange(1.15, [1.06, 1.18], 'memory', 'resin-data-sheets');
/** Density of part B in g/ml of an epoxy whose label is not at hand. */
export const defaultDensityB: CitedRange = citedRange(0.96, [0.93, 1.05], 'memory', 'resin-data-sheets');
const shrinkage: CitedRange = citedRange(2, [2, 5], 'memory', 'from-memory', 'minty-2018');
const fullCure: CitedRange = citedRange(7, [5, 7], 'memory', 'from-memory');
const ratioTolerance: Cited = cited(5, 'memory', 'from-memory');
const two: Cited<MixRatio> = cited({ a: 2, b: 1 }, 'memory', 'resin-data-sheets');
const three: Cited<MixRatio> = cited({ a: 3, b: 1 }, 'memory', 'resin-data-sheets');

/** Gel time of a thin layer, kept at the shop's temperature, over the pot life of 100 g in a cup: from a computed cup that heats itself. */
export const thinGelToPotLife: CitedRange = citedRange(4, [3, 9], 'inference', 'own-inference');

/** Gel time of a thin layer in minutes of a resin of which only the pot life is known, with its band. */
export function thinGel(potLife: CitedRange): CitedRange {
  const { value, low, high, because } = thinGelToPotLife;
  return {
    value: value * potLife.value,
    low: low * potLife.value,
    high: high * potLife.value,
    status: 'inference',
    because: [...new Set([...because, ...potLife.because])],
  };
}

const potLife: CitedRange = citedRange(25, [5, 40], 'memory', 'resin-chemistry-page', 'from-memory');
const gelOfPotLife: CitedRange = thinGel(potLife);

/** Resins by id. */
export const resins: Readonly<Record<ResinId, Resin>> = {
  coating: {
    name: 'coating epoxy',
    viscosityPaS: citedRange(1, [0.5, 4], 'memory', 'resin-data-sheets'),
    potLifeMin: potLife,
    gelMin: gelOfPotLife,
    tackyHours: citedRange(5, [2, 8], 'memory', 'recoat-pages', 'from-memory'),
    hardHours: citedRange(24, [12, 24], 'memory', 'from-memory'),
    fullCureDays: fullCure,
    ratioByVolume: two,
    ratioByWeight: null,
    usualRatioByVolume: two,
    ratioTolerancePct: ratioTolerance,
    densityAGPerMl: defaultDensityA,
    densityBGPerMl: defaultDensityB,
    densityMixedGPerMl: citedRange(1.087, [1.05, 1.15], 'computed', 'computed-here', 'resin-data-sheets'),
    deepestPourMm: citedRange(6, [3, 6], 'seen', 'pour-depth-pages'),
    largestMixG: citedRange(500, [250, 500], 'memory', 'from-memory'),
    minTempC: citedRange(15, [15, 18], 'memory', 'from-memory'),
    maxTempC: citedRange(27, [27, 27], 'memory', 'from-memory'),
    shrinkagePct: shrinkage,
  },
  laminating: {
    name: 'laminating epoxy',
    viscosityPaS: citedRange(1, [0.6, 1.5], 'memory', 'resin-data-sheets'),
    potLifeMin: potLife,
    gelMin: gelOfPotLife,
    tackyHours: citedRange(5, [2, 8], 'memory', 'recoat-pages', 'from-memory'),
    hardHours: citedRange(24, [12, 24], 'memory', 'from-memory'),
    fullCureDays: fullCure,
    ratioByVolume: three,
    ratioByWeight: null,
    usualRatioByVolume: three,
    ratioTolerancePct: ratioTolerance,
    densityAGPerMl: defaultDensityA,
    densityBGPerMl: defaultDensityB,
    densityMixedGPerMl: citedRange(1.103, [1.05, 1.15], 'computed', 'computed-here', 'resin-data-sheets'),
    deepestPourMm: citedRange(6, [3, 6], 'inference', 'own-inference', 'pour-depth-pages'),
    largestMixG: citedRange(500, [200, 1000], 'memory', 'from-memory'),
    minTempC: citedRange(10, [5, 10], 'memory', 'from-memory'),
    maxTempC: citedRange(30, [30, 30], 'memory', 'from-memory'),
    shrinkagePct: shrinkage,
  },
  'deep-pour': {
    name: 'deep-pour epoxy',
    viscosityPaS: citedRange(0.3, [0.15, 0.6], 'memory', 'resin-data-sheets'),
    potLifeMin: citedRange(240, [60, 480], 'inference', 'own-inference'),
    gelMin: citedRange(720, [480, 1440], 'memory', 'from-memory'),
    tackyHours: citedRange(16, [8, 24], 'inference', 'own-inference'),
    hardHours: citedRange(72, [24, 72], 'memory', 'from-memory'),
    fullCureDays: fullCure,
    ratioByVolume: two,
    ratioByWeight: null,
    usualRatioByVolume: two,
    ratioTolerancePct: ratioTolerance,
    densityAGPerMl: defaultDensityA,
    densityBGPerMl: defaultDensityB,
    densityMixedGPerMl: citedRange(1.087, [1.05, 1.15], 'computed', 'computed-here', 'resin-data-sheets'),
    deepestPourMm: citedRange(50, [12, 50], 'seen', 'pour-depth-pages'),
    largestMixG: citedRange(10_000, [5000, 20_000], 'memory', 'from-memory'),
    minTempC: citedRange(18, [18, 18], 'memory', 'from-memory'),
    maxTempC: citedRange(27, [25, 27], 'memory', 'from-memory'),
    shrinkagePct: shrinkage,
  },
};
