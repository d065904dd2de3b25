import { tabledNormalCdf } from '../tabled-normal.ts';
import type { Belief, Normal } from './belief-after.ts';

/** A median with the ends of its central 95 %. */
export interface Band {
  readonly medianMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/** A belief of a board under one spread within boards, and how much weight that spread has. */
export interface WeighedBelief {
  readonly weight: number;
  readonly within: number;
  readonly belief: Belief;
}

/** What is believed of a board and of a slot on it. */
export interface BoardFit {
  /** The board's median travel. */
  readonly board: Band;
  /** The next slot on this board. */
  readonly nextSlot: Band;
  /** Probability that a slot on this board shows a streak longer than a length in mm above 0. */
  readonly longerThan: (lengthMm: number) => number;
}

/** Points and spreads of less weight than this do not count: far below what a quantile is asked to. */
const NO_WEIGHT = 1e-8;

/** The bands of beliefs that are weighed against each other; the weights sum to 1. */
export function boardFit(all: readonly WeighedBelief[]): BoardFit {
  const parts = all.filter(({ weight }) => weight >= NO_WEIGHT);
  const cdf = (log: number, ofSlot: boolean): number =>
    parts.reduce(
      (sum, { weight, within, belief }) => sum + weight * cdfOf(belief, log, ofSlot ? within : 0),
      0,
    );
  const reach = parts.reduce((most, { within, belief }) => Math.max(most, Math.hypot(belief.sd, within)), 0);
  const mean = parts.reduce((sum, { weight, belief }) => sum + weight * belief.mean, 0);
  const around = { mean, sd: reach };
  return {
    get board() {
      return band(around, (log) => cdf(log, false));
    },
    nextSlot: band(around, (log) => cdf(log, true)),
    longerThan: (lengthMm) => 1 - cdf(Math.log(lengthMm), true),
  };
}

/**
 * Probability that a log is below `log`, with `spread` about the board's own value (0: the board's value
 * itself).
 */
function cdfOf(belief: Belief, log: number, spread: number): number {
  if (belief.grid === null) {
    return tabledNormalCdf((log - belief.mean) / Math.hypot(belief.sd, spread));
  }
  if (spread > 0) {
    return belief.grid.reduce(
      (sum, point) =>
        point.weight < NO_WEIGHT ? sum : sum + point.weight * tabledNormalCdf((log - point.log) / spread),
      0,
    );
  }
  return gridCdf(belief.grid, log);
}

/** Cumulated weight up to `log`, each point standing for the cell around it. */
function gridCdf(grid: readonly { readonly log: number; readonly weight: number }[], log: number): number {
  const step = ((grid.at(-1)?.log ?? 0) - (grid[0]?.log ?? 0)) / (grid.length - 1);
  let sum = 0;
  for (const point of grid) {
    const share = (log - point.log) / step + 0.5;
    if (share <= 0) {
      break;
    }
    sum += point.weight * Math.min(1, share);
  }
  return sum;
}

function band(around: Normal, cdf: (log: number) => number): Band {
  const [lowMm, medianMm, highMm] = [0.025, 0.5, 0.975].map((share) =>
    Math.exp(quantile(around, cdf, share)),
  );
  return { lowMm: lowMm ?? 0, medianMm: medianMm ?? 0, highMm: highMm ?? 0 };
}

/** Half width of the interval that holds every quantile, in standard deviations. */
const QUANTILE_HALF_WIDTH_SD = 20;
/** Width of the interval that a quantile is known to, in standard deviations, and most steps to it. */
const QUANTILE_TOL_SD = 1e-12;
const MAX_QUANTILE_STEPS = 100;

/**
 * A quantile between two ends that close in on it: by turns where the chord between them meets it, the weight of
 * an end that stays halved (the Illinois rule), and at their middle.
 */
function quantile(around: Normal, cdf: (log: number) => number, share: number): number {
  let [low, high] = [-1, 1].map((side) => around.mean + side * QUANTILE_HALF_WIDTH_SD * around.sd) as [
    number,
    number,
  ];
  let [below, above] = [-share, 1 - share];
  for (let turn = 0; turn < MAX_QUANTILE_STEPS && high - low > QUANTILE_TOL_SD * around.sd; turn++) {
    const chord = low + ((high - low) * below) / (below - above);
    const at = turn < MIN_HALVINGS || !(chord > low && chord < high) ? (low + high) / 2 : chord;
    const off = cdf(at) - share;
    if (off === 0) {
      return at;
    }
    if (off < 0) {
      [low, below, above] = [at, off, above / 2];
    } else {
      [high, above, below] = [at, off, below / 2];
    }
  }
  return (low + high) / 2;
}

/** Halvings before chords are of use: the ends begin far out, where nothing rises. */
const MIN_HALVINGS = 5;
