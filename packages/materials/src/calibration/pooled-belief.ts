import { type Belief, beliefAfter, type Normal } from './belief-after.ts';
import type { CouponReading } from './coupon.ts';

/** Coupons of one board and one treatment. */
export interface CouponGroup {
  /** `null` for the board of the job. */
  readonly board: string | null;
  readonly treatment: string;
  readonly isOwnBoard: boolean;
  readonly isOwnTreatment: boolean;
  /** As they would be under the job's own treatment by the prior. */
  readonly readings: readonly CouponReading[];
}

/** What is believed before any coupon, and how boards, treatments and the wood share the doubt. */
export interface PooledPrior {
  /** Prior median travel of the job, mm. */
  readonly medianMm: number;
  /** Variance of ln(median) between boards. */
  readonly variance: number;
  /** Variance that the wood has beyond it: a wood without a prior of its own. */
  readonly woodVariance: number;
  readonly shares: { readonly wood: number; readonly treatment: number; readonly board: number };
  /** Standard deviation of ln(travel) within a board. */
  readonly spreadWithin: number;
}

/** A belief of the log of a factor on the prior median. */
type LogFactor = Normal;

/** What coupons say under one spread within boards. */
export interface PooledBelief extends LogFactor {
  /** ln of the density of all readings, the job's own among them, under this spread. */
  readonly logEvidence: number;
}

/**
 * What the coupons of other boards and treatments say of the job's own: mean and standard deviation of
 * ln(factor on the prior median).
 *
 * ln(median) of a group is the prior plus a part of the wood, of its treatment and of its board, all normal;
 * the parts that two groups have in common tie them. Streak lengths are weighed exactly; readings that leave
 * an interval are matched by mean and variance, each group given all others (expectation propagation), until
 * nothing moves by a millionth of what is said. The job's own group is weighed along with the others, but its
 * own say is left out of the result, so that a caller can add it exactly. Without other groups it is the
 * prior: 0 and its spread.
 */
export function beliefFromElsewhere(groups: readonly CouponGroup[], prior: PooledPrior): PooledBelief {
  const joint = new JointBelief(covarianceOf(groups, prior));
  const sites: Site[] = groups.map(() => NOTHING_SAID);
  for (let turn = 0; turn < MAX_TURNS; turn++) {
    let moved = 0;
    groups.forEach((group, g) => {
      const before = sites[g] as Site;
      const after = siteOf(group, joint.without(g, before), prior);
      joint.add(g, difference(after, before));
      sites[g] = after;
      const { precision, shift } = difference(after, before);
      moved = Math.max(moved, (Math.abs(precision) + Math.abs(shift)) / (1 + after.precision));
    });
    if (moved < SETTLED_REL_TOL) {
      break;
    }
  }
  const logEvidence = groups.reduce((sum, group, g) => {
    const site = sites[g] as Site;
    const others = joint.without(g, site);
    return sum + groupAfter(group, others, prior).logEvidence - logNormOf(others, site);
  }, joint.logNorm);
  const own = groups.findIndex((group) => group.isOwnBoard && group.isOwnTreatment);
  if (own >= 0) {
    joint.add(own, difference(NOTHING_SAID, sites[own] as Site));
  }
  return { ...joint.at(groups.length), logEvidence };
}

/** ln of the integral of a normal belief times what a site says, `exp(shift·x − precision·x²/2)`. */
function logNormOf({ mean, sd }: LogFactor, { precision, shift }: Site): number {
  const variance = sd ** 2;
  const after = 1 / variance + precision;
  return 0.5 * ((mean / variance + shift) ** 2 / after - mean ** 2 / variance - Math.log(variance * after));
}

/** Turns of expectation propagation; a shop's coupons settle in ten. */
const MAX_TURNS = 40;
/** Settled: no site moves by more than this share of what it says, far below what a streak can be read to. */
const SETTLED_REL_TOL = 1e-6;

/**
 * What a group's readings say of its ln(median), as a normal likelihood: precision, and precision times mean.
 */
interface Site {
  readonly precision: number;
  readonly shift: number;
}

/** Covariances of the groups' ln(median), and of the job's own in the last row. */
function covarianceOf(groups: readonly CouponGroup[], prior: PooledPrior): readonly Float64Array[] {
  const all = [...groups, { board: null, treatment: 'own' }];
  return all.map((a) =>
    Float64Array.from(all, (b) => {
      const { wood, treatment, board } = prior.shares;
      const share = wood + (a.treatment === b.treatment ? treatment : 0) + (a.board === b.board ? board : 0);
      return prior.woodVariance + prior.variance * share;
    }),
  );
}

const NOTHING_SAID: Site = { precision: 0, shift: 0 };

function difference(a: Site, b: Site): Site {
  return { precision: a.precision - b.precision, shift: a.shift - b.shift };
}

/** A joint normal belief of the groups' ln(median) and the job's own, moved by one site at a time. */
class JointBelief {
  readonly #covariance: readonly Float64Array[];
  readonly #mean: Float64Array;
  #logNorm = 0;

  constructor(covariance: readonly Float64Array[]) {
    this.#covariance = covariance.map((line) => Float64Array.from(line));
    this.#mean = new Float64Array(covariance.length);
  }

  /** ln of the integral of the belief before anything was added times all that was. */
  get logNorm(): number {
    return this.#logNorm;
  }

  /** Belief of one row. */
  at(row: number): LogFactor {
    return { mean: this.#mean[row] as number, sd: Math.sqrt(this.#variance(row)) };
  }

  /** Belief of one row as it were without what a site says of it. */
  without(row: number, { precision, shift }: Site): LogFactor {
    const variance = this.#variance(row);
    const rest = 1 / variance - precision;
    return { mean: ((this.#mean[row] as number) / variance - shift) / rest, sd: rest ** -0.5 };
  }

  /** Takes in what is said of one row; a negative site takes it out again. */
  add(row: number, { precision, shift }: Site): void {
    const mean = this.#mean;
    this.#logNorm += logNormOf(this.at(row), { precision, shift });
    const column = Float64Array.from(this.#covariance[row] as Float64Array);
    const gain = 1 / (1 + precision * this.#variance(row));
    const pull = gain * (shift - precision * (mean[row] as number));
    for (let i = 0; i < mean.length; i++) {
      const line = this.#covariance[i] as Float64Array;
      const at = column[i] as number;
      mean[i] = (mean[i] as number) + at * pull;
      for (let j = 0; j < mean.length; j++) {
        line[j] = (line[j] as number) - precision * gain * at * (column[j] as number);
      }
    }
  }

  #variance(row: number): number {
    return (this.#covariance[row] as Float64Array)[row] as number;
  }
}

/** ln(median) of a group after its readings, given what the others say of it. */
function groupAfter({ readings }: CouponGroup, others: LogFactor, prior: PooledPrior): Belief {
  return beliefAfter(
    {
      medianMm: prior.medianMm * Math.exp(others.mean),
      spreadBetween: others.sd,
      spreadWithin: prior.spreadWithin,
    },
    readings,
  );
}

/** The likelihood of a group that turns what the others say into what they say with it. */
function siteOf(group: CouponGroup, others: LogFactor, prior: PooledPrior): Site {
  const log = Math.log(prior.medianMm);
  const after = groupAfter(group, others, prior);
  return {
    // likelihoods of intervals are log-concave: they never widen a belief
    precision: Math.max(0, after.sd ** -2 - others.sd ** -2),
    shift: (after.mean - log) * after.sd ** -2 - others.mean * others.sd ** -2,
  };
}
