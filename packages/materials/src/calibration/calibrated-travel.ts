import {
  type BleedJob,
  type BleedTravel,
  bleedClass,
  bleedTravel,
  NORMAL_95_QUANTILE,
  spreadBetweenBoards,
  spreadWithinBoard,
} from '../bleed-travel.ts';
import { type Cited, cited } from '../cited.ts';
import { REFERENCE_TEMPERATURE_C } from '../flow-parameters.ts';
import { limits } from '../limits.ts';
import { type Resin, resins } from '../resin.ts';
import { type Sealer, sealers } from '../sealer.ts';
import { type Wood, woods } from '../wood.ts';
import { type Belief, beliefAfter } from './belief-after.ts';
import { type BleedChance, bleedChance } from './bleed-chance.ts';
import { boardFit } from './board-fit.ts';
import type { Coupon } from './coupon.ts';
import {
  LENGTHS_THAT_TELL,
  learnSpread,
  type SpreadRange,
  spreadWithinRange,
  spreadWithinRangeMeasured,
  type WeighedSpread,
} from './learn-spread.ts';
import { beliefFromElsewhere, type CouponGroup } from './pooled-belief.ts';
import { isBleeding, scaledReading } from './scaled-reading.ts';

/**
 * Shares of the variance between boards that the wood’s prior, the seal and resin, and the single board are
 * each taken to have: our own choice, a third each. They sum to 1, so coupons of the job’s own board in its
 * own seal act as if there were no shares at all.
 */
export const varianceShares: Cited<{
  readonly wood: number;
  readonly treatment: number;
  readonly board: number;
}> = cited({ wood: 1 / 3, treatment: 1 / 3, board: 1 / 3 }, 'prior', 'own-prior');

/**
 * Share of boards and treatments that the prior is badly wrong about, and how many times as wide its spread is for them: our own choice.
 * Without them three streaks of 4 mm under a seal that should hold them to 0.07 mm pass for chance within a board that is sealed well.
 */
export const surprise: Cited<{ readonly share: number; readonly factor: number }> = cited(
  { share: 0.05, factor: 3 },
  'prior',
  'own-prior',
);

/** Factor of cure hours up to which two seals count as one treatment. */
export const sameHoursFactor: Cited = cited(1.5, 'inference', 'own-inference');
/** Kelvin of difference up to which two pours count as one treatment. */
export const sameTemperatureK: Cited = cited(5, 'inference', 'own-inference');

/** Colour travel with the coupons that moved it. */
export interface CalibratedTravel extends BleedTravel {
  /** Rows of the coupons that count for this wood, rising. */
  readonly couponRows: readonly number[];
  /** Slots on these coupons. */
  readonly slots: number;
  /**
   * Standard deviation of ln(travel) between streaks of one board as these slots show it, the median of what is
   * believed; without slots as it is taken.
   */
  readonly spreadWithin: number;
  /**
   * Slots of the job's own board and treatment alone: how many bleed visibly, and what that says by itself;
   * `null` without such slots.
   */
  readonly ownSlots: {
    readonly slots: number;
    readonly bleeding: number;
    readonly chance: BleedChance;
  } | null;
}

/** From how many boards on coupons of other boards say something of the wood. */
const SEVERAL_BOARDS = 2;

/**
 * Colour travel in mm along the fibres, moved by the maker's coupons of the same wood; without one it is the
 * prior, {@link bleedTravel}.
 *
 * Coupons of the job's own board move that board. Coupons of other boards count only when two boards or more
 * have coupons of this wood: then they move the wood. Coupons in another seal or resin count by what they say
 * of board and wood. Readings made a little warmer, cooler, earlier or later than the job are carried over by
 * the formulas of the prior.
 * @throws {RangeError} when coats, hours or a reading is out of range
 */
export function calibratedTravel(job: BleedJob, coupons: readonly Coupon[]): CalibratedTravel {
  const prior = bleedTravel(job);
  const used = couponsFor(job, coupons);
  if (used.length === 0 || prior.medianMm === 0) {
    return { ...prior, couponRows: [], slots: 0, spreadWithin: spreadWithinBoard.value, ownSlots: null };
  }
  const between = (job.spreadBetween ?? spreadBetweenBoards.value) ** 2;
  const beliefs = beliefsOf({ ...prior, between }, groupsOf(job, prior.medianMm, used));
  const fit = boardFit(
    beliefs.map(({ spread, weight, value }) => ({ within: spread, weight, belief: value })),
  );
  const { medianMm, lowMm, highMm } = fit.nextSlot;
  return {
    ...prior,
    medianMm,
    lowMm,
    highMm,
    class: bleedClass(medianMm),
    visibleProbability: fit.longerThan(limits.visibleStreak.value),
    longerThan: fit.longerThan,
    basis: 'calibrated',
    spread: Math.log(highMm / lowMm) / (2 * NORMAL_95_QUANTILE),
    spreadWithin: medianSpread(beliefs),
    sources: [...new Set([...prior.sources, 'own-coupons' as const])],
    couponRows: used.map(({ row }) => row).toSorted((a, b) => a - b),
    slots: used.reduce((sum, { readings }) => sum + readings.length, 0),
    ownSlots: ownSlotsOf(job, used),
  };
}

/** What is believed without coupons, and the variance between boards in its spread. */
interface TravelPrior extends BleedTravel {
  readonly between: number;
}

/**
 * ln(median travel in mm) of the job's board under each spread within boards, weighed by what all slots say of
 * that spread. One spread holds for all boards of the wood.
 */
function beliefsOf(prior: TravelPrior, groups: readonly CouponGroup[]): readonly WeighedSpread<Belief>[] {
  const { factor } = surprise.value;
  // slots in which nothing is seen could only be surprisingly good, which is no reason to hope for more
  const share = groups.some(({ readings }) => readings.some(({ kind }) => kind === 'streak'))
    ? surprise.value.share
    : 0;
  const weighed = learnSpread(spreadRange(groups), (spreadWithin) => {
    const parts = [
      { log: Math.log(1 - share), ...beliefUnder(prior, groups, spreadWithin, 1) },
      ...(share > 0 ? [{ log: Math.log(share), ...beliefUnder(prior, groups, spreadWithin, factor) }] : []),
    ].map(({ log, logEvidence, value }) => ({ log: log + logEvidence, value }));
    const most = Math.max(...parts.map(({ log }) => log));
    const total = parts.reduce((sum, { log }) => sum + Math.exp(log - most), 0);
    return {
      logEvidence: most + Math.log(total),
      value: parts.map(({ log, value }) => ({ part: Math.exp(log - most) / total, value })),
    };
  });
  return weighed.flatMap(({ spread, weight, value: parts }) =>
    parts.map(({ part, value }) => ({ spread, weight: weight * part, value })),
  );
}

/** What is believed of the job's board under one spread within boards, for a prior whose spread is `widerBy` times as wide. */
function beliefUnder(
  prior: TravelPrior,
  groups: readonly CouponGroup[],
  spreadWithin: number,
  widerBy: number,
): { readonly logEvidence: number; readonly value: Belief } {
  const own = groups.find((group) => group.isOwnBoard && group.isOwnTreatment)?.readings ?? [];
  if (groups.length === 1 && own.length > 0) {
    const spreadBetween = widerBy * Math.sqrt(prior.spread ** 2 - spreadWithinBoard.value ** 2);
    const value = beliefAfter({ medianMm: prior.medianMm, spreadBetween, spreadWithin }, own);
    return { logEvidence: value.logEvidence, value };
  }
  const elsewhere = beliefFromElsewhere(groups, {
    medianMm: prior.medianMm,
    variance: widerBy ** 2 * prior.between,
    // what the spread holds beyond boards and streaks is doubt about the wood
    woodVariance:
      widerBy ** 2 * Math.max(0, prior.spread ** 2 - prior.between - spreadWithinBoard.value ** 2),
    shares: varianceShares.value,
    spreadWithin,
  });
  const medianMm = prior.medianMm * Math.exp(elsewhere.mean);
  const value = beliefAfter({ medianMm, spreadBetween: elsewhere.sd, spreadWithin }, own);
  return { logEvidence: elsewhere.logEvidence, value };
}

/** Where the spread is taken to lie, by how many lengths tell of it. */
function spreadRange(groups: readonly CouponGroup[]): SpreadRange {
  const telling = groups.reduce((sum, { readings }) => {
    const lengths = readings.filter(({ kind }) => kind === 'streak').length;
    return sum + Math.max(0, lengths - 1);
  }, 0);
  return (telling < LENGTHS_THAT_TELL ? spreadWithinRange : spreadWithinRangeMeasured).value;
}

function medianSpread(beliefs: readonly WeighedSpread<Belief>[]): number {
  let below = 0;
  for (const { spread, weight } of beliefs) {
    below += weight;
    if (below >= 0.5) {
      return spread;
    }
  }
  return spreadWithinBoard.value;
}

/** The coupons that say something of this wood: none of a single other board. */
function couponsFor(job: BleedJob, coupons: readonly Coupon[]): readonly Coupon[] {
  const wood = partsOf(job).wood;
  const same = coupons.filter(({ made, readings }) => partsOf(made).wood === wood && readings.length > 0);
  const boards = new Set(same.map(({ board }) => board));
  return boards.has(null) || boards.size >= SEVERAL_BOARDS ? same : [];
}

/**
 * Coupons of one board and one treatment together, their readings as they would be under the job's own
 * treatment by the prior.
 */
function groupsOf(job: BleedJob, medianMm: number, coupons: readonly Coupon[]): readonly CouponGroup[] {
  const groups = new Map<string, CouponGroup>();
  for (const { board, made, readings } of coupons) {
    const isOwnTreatment = isSameTreatment(job, made);
    const treatment = isOwnTreatment ? 'own' : treatmentKey(made);
    const id = JSON.stringify([board, treatment]);
    // a coupon that does not say heart or sap is taken to be of the job's part
    const factor = medianMm / bleedTravel({ ...made, part: partOf(made) ?? partOf(job) }).medianMm;
    groups.set(id, {
      board,
      treatment,
      isOwnBoard: board === null,
      isOwnTreatment,
      readings: [
        ...(groups.get(id)?.readings ?? []),
        ...readings.map((reading) => scaledReading(reading, factor)),
      ],
    });
  }
  return [...groups.values()];
}

function isSameTreatment(job: BleedJob, made: BleedJob): boolean {
  const [a, b] = [partsOf(job), partsOf(made)];
  const [early, late] = [Math.min(a.sealHours, b.sealHours), Math.max(a.sealHours, b.sealHours)];
  return (
    a.seal === b.seal &&
    a.coats === b.coats &&
    a.resin === b.resin &&
    (a.part === null || b.part === null || a.part === b.part) &&
    (late <= early * sameHoursFactor.value || a.coats === 0 || a.seal.curve.value.length === 0) &&
    Math.abs(a.temperatureC - b.temperatureC) <= sameTemperatureK.value
  );
}

function treatmentKey(made: BleedJob): string {
  const { seal, coats, sealHours, resin, temperatureC, part } = partsOf(made);
  return JSON.stringify([seal.name, coats, sealHours, resin.name, temperatureC, part]);
}

/**
 * Slots of the job's own board and treatment counted by whether a streak shows; readings that leave it open
 * are not counted.
 */
function ownSlotsOf(job: BleedJob, coupons: readonly Coupon[]): CalibratedTravel['ownSlots'] {
  const seen = coupons
    .filter(({ board, made }) => board === null && isSameTreatment(job, made))
    .flatMap(({ readings }) => readings.map((reading) => isBleeding(reading, limits.visibleStreak.value)))
    .filter((shows) => shows !== null);
  if (seen.length === 0) {
    return null;
  }
  const bleeding = seen.filter(Boolean).length;
  return { slots: seen.length, bleeding, chance: bleedChance(bleeding, seen.length) };
}

function partOf({ part = null }: BleedJob): 'heart' | 'sap' | null {
  return part;
}

function partsOf(job: BleedJob): {
  readonly wood: Wood;
  readonly part: 'heart' | 'sap' | null;
  readonly seal: Sealer;
  readonly coats: number;
  readonly sealHours: number;
  readonly resin: Resin;
  readonly temperatureC: number;
} {
  const resin = job.resin ?? 'coating';
  return {
    wood: typeof job.wood === 'string' ? woods[job.wood] : job.wood,
    part: partOf(job),
    seal: typeof job.seal === 'string' ? sealers[job.seal] : job.seal,
    coats: job.coats,
    sealHours: job.sealHours,
    resin: typeof resin === 'string' ? resins[resin] : resin,
    temperatureC: job.temperatureC ?? REFERENCE_TEMPERATURE_C,
  };
}
