import { type Cited, cited } from './cited.ts';
import { type FlowBounds, flowBounds, flowFactor } from './flow-laws.ts';
import { capillarySources, REFERENCE_TEMPERATURE_C } from './flow-parameters.ts';
import { limits } from './limits.ts';
import { normalCdf } from './normal.ts';
import { type Resin, type ResinId, resins } from './resin.ts';
import { sealFactor } from './seal-factor.ts';
import { type Sealer, type SealId, sealers } from './sealer.ts';
import type { SourceId } from './sources.ts';
import { type Wood, type WoodId, woods } from './wood.ts';

/** Spread of ln(travel) between boards of one wood, one seal and one resin. */
export const spreadBetweenBoards: Cited = cited(0.7, 'prior', 'own-prior');
/** Spread of ln(travel) between streaks of one board. */
export const spreadWithinBoard: Cited = cited(0.5, 'prior', 'own-prior');
/** Ends of the classes in mm of median travel: below the first clean, then slight, moderate, severe. */
export const bleedClassEndsMm: Cited<readonly [clean: number, slight: number, moderate: number]> = cited(
  [0.45, 1, 2],
  'prior',
  'own-prior',
);

/** Standard deviations from the mean of a normal variable to the ends of its central 95 %. */
export const NORMAL_95_QUANTILE = 1.959963984540054;

/** Class of bleed by its median travel. */
export type BleedClass = 'clean' | 'slight' | 'moderate' | 'severe';

/** The wood, the seal and the resin whose colour may run. */
export interface BleedJob {
  readonly wood: Wood | WoodId;
  /** Heartwood or sapwood; moves the travel only where the wood's row has a factor for it. */
  readonly part?: 'heart' | 'sap' | null;
  readonly seal: Sealer | SealId;
  /** Coats of seal; 0 is the same as none. */
  readonly coats: number;
  /** Hours that the last coat has cured. */
  readonly sealHours: number;
  /** Default: coating resin. */
  readonly resin?: Resin | ResinId;
  /** Temperature of the shop and the resin, default 25 °C, the temperature that the priors are given at. */
  readonly temperatureC?: number;
  /** Standard deviation of ln(travel) between boards, above 0; default {@link spreadBetweenBoards}. */
  readonly spreadBetween?: number;
}

/** How far colour may run along the fibres from a wall that they meet head on. */
export interface BleedTravel {
  readonly medianMm: number;
  /** Ends of the central 95 % band. */
  readonly lowMm: number;
  readonly highMm: number;
  readonly class: BleedClass;
  /** Probability that a streak is longer than the visible limit. */
  readonly visibleProbability: number;
  /** Probability that a streak is longer than a length in mm above 0. */
  readonly longerThan: (lengthMm: number) => number;
  /** `prior` without a coupon; else moved by them, see `calibratedTravel`. */
  readonly basis: 'prior' | 'calibrated';
  /**
   * False where this wood has no prior of its own: then one by its likeness to other woods, or the mean of the known
   * ones, with its own spread.
   */
  readonly woodKnown: boolean;
  /** What may stop a streak, and how many times as far as the reference the resin would run by its viscosity alone. */
  readonly flow: FlowBounds & { readonly byViscosity: number };
  /** Standard deviation of ln(travel) that the band and the probability use. */
  readonly spread: number;
  readonly sources: readonly SourceId[];
}

/**
 * Returns the prior band of colour travel in mm along the fibres: wood prior × seal factor × resin against
 * the reference resin, by viscosity and by trapped air, see `flowFactor`.
 *
 * Log-normal. An honest prior: no measured streak lengths were found, so read rank and band, not a bare
 * millimetre. An oiled or waxed board is outside of it: stop and clean (see `oilCleaning`).
 * @throws {RangeError} when coats or hours are out of range
 */
export function bleedTravel(job: BleedJob): BleedTravel {
  const wood = typeof job.wood === 'string' ? woods[job.wood] : job.wood;
  const seal = typeof job.seal === 'string' ? sealers[job.seal] : job.seal;
  const chosen = job.resin ?? 'coating';
  const resin = typeof chosen === 'string' ? resins[chosen] : chosen;
  const temperatureC = job.temperatureC ?? REFERENCE_TEMPERATURE_C;

  const prior = woodPrior(wood);
  const part = job.part === 'heart' ? wood.heartFactor : job.part === 'sap' ? wood.sapFactor : null;
  const flow = flowFactor(wood, resin, temperatureC);
  const medianMm =
    prior.medianMm *
    (part?.value ?? 1) *
    sealFactor(seal, job.coats, job.sealHours, temperatureC) *
    flow.factor;
  const spread = Math.hypot(
    job.spreadBetween ?? spreadBetweenBoards.value,
    spreadWithinBoard.value,
    prior.extraSpread,
    flow.spread,
  );
  const reach = Math.exp(NORMAL_95_QUANTILE * spread);
  return {
    medianMm,
    lowMm: medianMm / reach,
    highMm: medianMm * reach,
    class: bleedClass(medianMm),
    visibleProbability: visibleProbability(medianMm, spread),
    longerThan: (lengthMm) => (medianMm === 0 ? 0 : normalCdf(Math.log(medianMm / lengthMm) / spread)),
    basis: 'prior',
    woodKnown: wood.bleedPriorMm !== null,
    spread,
    flow: { byViscosity: flow.byViscosity, ...flowBounds(wood, resin, temperatureC) },
    sources: [
      ...new Set<SourceId>([
        ...prior.because,
        ...(part?.because ?? []),
        ...seal.curve.because,
        ...resin.viscosityPaS.because,
        ...resin.gelMin.because,
        ...capillarySources,
      ]),
    ],
  };
}

/** Class of a median travel in mm. */
export function bleedClass(medianMm: number): BleedClass {
  const [clean, slight, moderate] = bleedClassEndsMm.value;
  if (medianMm < clean) {
    return 'clean';
  }
  if (medianMm < slight) {
    return 'slight';
  }
  return medianMm < moderate ? 'moderate' : 'severe';
}

/**
 * Probability that a streak is longer than the visible limit, for a log-normal travel of this median in mm
 * and spread.
 */
export function visibleProbability(medianMm: number, spread: number): number {
  if (medianMm === 0) {
    return 0;
  }
  return normalCdf(Math.log(medianMm / limits.visibleStreak.value) / spread);
}

interface WoodPrior {
  readonly medianMm: number;
  readonly extraSpread: number;
  readonly because: readonly SourceId[];
}

/**
 * The wood's own prior, or what its likeness to others says, or the log mean of the woods that have a prior, with
 * their standard deviation as added spread.
 */
function woodPrior(wood: Wood): WoodPrior {
  if (wood.bleedPriorMm) {
    return { medianMm: wood.bleedPriorMm.value, extraSpread: 0, because: wood.bleedPriorMm.because };
  }
  if (wood.bleedAnalogy) {
    const { medianMm, boardSpread } = wood.bleedAnalogy;
    return {
      medianMm: medianMm.value,
      extraSpread: Math.sqrt(Math.max(0, boardSpread.value ** 2 - spreadBetweenBoards.value ** 2)),
      because: medianMm.because,
    };
  }
  const logs = Object.values(woods).flatMap((known) =>
    known.bleedPriorMm ? [Math.log(known.bleedPriorMm.value)] : [],
  );
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const variance = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / (logs.length - 1);
  return { medianMm: Math.exp(mean), extraSpread: Math.sqrt(variance), because: ['own-prior'] };
}
