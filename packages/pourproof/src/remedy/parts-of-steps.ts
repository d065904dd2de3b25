import type { Job } from '@pourproof/job';
import type { FixStep } from '@pourproof/proof';
import type { RemedyPart } from './remedies.ts';

/** The part of a job that a way out changes; `null` for work on the drawing or at the bench. */
export const PART_OF: Readonly<Record<FixStep['do'], RemedyPart | null>> = {
  'use-bit': 'bit',
  'use-vee': 'bit',
  'use-tip': 'bit',
  scale: 'size',
  widen: null,
  'move-apart': null,
  track: 'spacing',
  'space-lines': 'spacing',
  turn: 'turn',
  move: 'place',
  'change-seal': 'seal',
  'fewer-coats': 'seal',
  wait: 'seal',
  'pour-sooner': 'seal',
  abrade: null,
  deepen: 'depth',
  'cut-shallower': 'depth',
  'level-less': 'levelling',
  'level-by': 'levelling',
  flatten: null,
  'use-scale': 'scale',
  'zero-between': null,
  'mix-more': null,
  'read-label': null,
  'top-up': null,
  'change-temperature': 'resin',
  'less-pigment': 'resin',
  'pour-proud': 'levelling',
  'more-cups': null,
  'pour-in-layers': null,
  'use-resin': 'resin',
  clean: null,
  'test-coupon': null,
  'move-clamp': null,
  'thicker-board': 'board',
  'part-by-wall': null,
  'pour-in-rounds': 'rounds',
  'join-ends': 'reading',
  'redraw-ends': null,
  'close-gap': null,
  'merge-shapes': null,
};

/** Steps of the amounts that are sought: what a maker sets by hand (our choice). */
const QUANTA = { mm: 0.05, factor: 0.005, deg: 1, hours: 0.5, spacing: 0.02 } as const;
const MAX = { scale: 1.6, spacing: 2, turn: 90, hours: 72 } as const;

/** A way out of which more or less can be done, in whole steps. */
export interface Amount {
  /** As many steps as it does. */
  readonly steps: number;
  readonly most: number;
  readonly at: (steps: number) => FixStep;
}

/** The amount of a way out; `null` where it has none. */
export function amountOf(step: FixStep, { depthMm }: Job): Amount | null {
  switch (step.do) {
    case 'scale':
      return inSteps(step.factor - 1, Math.max(MAX.scale, 1.1 * step.factor) - 1, QUANTA.factor, (by) => ({
        ...step,
        factor: 1 + by,
      }));
    case 'space-lines':
      return inSteps(step.factor - 1, Math.max(MAX.spacing, 1.1 * step.factor) - 1, QUANTA.spacing, (by) => ({
        ...step,
        factor: 1 + by,
      }));
    case 'track':
    case 'deepen':
    case 'level-less':
      return inSteps(step.byMm, 4 * step.byMm, QUANTA.mm, (byMm) => ({ ...step, byMm }));
    case 'cut-shallower':
      // the depth of a round that has one of its own is as good as known
      return step.round === undefined && step.toMm < depthMm
        ? inSteps(depthMm - step.toMm, depthMm - step.toMm, QUANTA.mm, (byMm) => ({
            ...step,
            toMm: Math.max(step.toMm, depthMm - byMm),
          }))
        : null;
    case 'wait':
      return inSteps(step.hours, MAX.hours, QUANTA.hours, (hours) => ({ ...step, hours }));
    case 'turn':
      return inSteps(Math.abs(step.deg), MAX.turn, QUANTA.deg, (deg) => ({
        ...step,
        deg: Math.sign(step.deg) * deg,
      }));
    default:
      return null;
  }
}

function inSteps(value: number, most: number, quantum: number, of: (value: number) => FixStep): Amount {
  const rounded = (steps: number): number => Number((steps * quantum).toFixed(4));
  return {
    steps: Math.max(1, Math.ceil(value / quantum - 1e-9)),
    most: Math.max(1, Math.floor(most / quantum + 1e-9)),
    at: (steps) => of(rounded(steps)),
  };
}
