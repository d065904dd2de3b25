import { type Job, type JobInput, shopBit } from '@pourproof/job';
import { applyFix, type Finding, type FixStep } from '@pourproof/proof';
import type { Source } from '../source.ts';
import type { VetOptions } from '../vet.ts';
import { amountOf, PART_OF } from './parts-of-steps.ts';
import type { RemedyPart } from './remedies.ts';

/** A way to change a job, of which more or less can be done where it has steps. */
export interface Candidate {
  readonly part: RemedyPart;
  /** As many steps as a formula proposes; 1 where there is no more or less. */
  readonly guess: number;
  readonly most: number;
  /** The job changed by so many steps; `null` where no setting says it. */
  readonly at: (steps: number) => JobInput | null;
}

/** Step of a widening, mm (our choice: about what a sheet shows). */
const WIDEN_MM = 0.05;
/** A widening is sought up to this many times what a formula proposes (our choice). */
const WIDEN_MOST = 3;

/** All strokes wider than they are, or narrower where it is the wood between them that is too thin. */
function widened(job: JobInput, settled: Job, step: FixStep & { readonly do: 'widen' }): Candidate {
  const { widenMm = 0 } = settled.outlines;
  const sign = step.what === 'wood' ? -1 : 1;
  const guess = Math.max(1, Math.ceil(step.byMm / WIDEN_MM - 1e-9));
  const at = (steps: number): JobInput => ({
    ...job,
    widen: `${Number((widenMm + sign * steps * WIDEN_MM).toFixed(2))}mm`,
  });
  return { part: 'stroke', guess, most: WIDEN_MOST * guess, at };
}

/** Steps of a weight axis (our choice: hardly anyone sees less). */
const WEIGHT_STEP = 10;

/** Every way to change a job that its open findings, the shop's bits and the font offer, within what may be changed. */
export function candidatesFor(
  { job, open }: { readonly job: JobInput; readonly open: readonly Finding[] },
  settled: Job,
  { source, options, may, weight }: Bench,
): readonly Candidate[] {
  const context = {
    materials: options.materials,
    shop: options.shop,
    isLettering: source.kind === 'lettering',
  };
  const change = (step: FixStep) => (): JobInput | null => applyFix(job, step, context);
  const proposed = open
    .flatMap(({ fix: { options: fixes } }) => fixes)
    .flatMap((fix): readonly Candidate[] => {
      const { also: _, leaves: __, brings: ___, couponRows: ____, ...step } = fix;
      if (step.do === 'widen') {
        return may.has('stroke') ? [widened(job, settled, step)] : [];
      }
      const part = PART_OF[step.do];
      if (part === null || !may.has(part)) {
        return [];
      }
      const amount = amountOf(step);
      return [
        amount === null
          ? { part, guess: 1, most: 1, at: change(step) }
          : {
              part,
              guess: amount.steps,
              most: Math.max(amount.steps, amount.most),
              at: (steps) => change(amount.at(steps))(),
            },
      ];
    });
  return distinct([...proposed, ...bitsOfShop(job, settled, may), ...heavier(job, weight, may)]);
}

/** What stands beside a job that is to be changed. */
export interface Bench {
  readonly source: Source;
  readonly options: VetOptions;
  readonly may: ReadonlySet<RemedyPart>;
  /** The weight axis of the font; `null` where it has none. */
  readonly weight: { readonly now: number; readonly max: number } | null;
}

/** Each bit of the shop that the job does not have: after its own where it is smaller, and in their place. */
function bitsOfShop(job: JobInput, settled: Job, may: ReadonlySet<RemedyPart>): readonly Candidate[] {
  if (!may.has('bit') || settled.shop === null || settled.rounds.some(({ bits }) => bits !== null)) {
    return [];
  }
  const given = job.bit ?? settled.bits;
  const own = settled.bits.map((bit) => shopBit(settled.shop, bit)?.text);
  const others = settled.shop.bits.filter(({ text }) => !own.includes(text));
  const isSmaller = (mm: number): boolean =>
    settled.bits.every((bit) => bit.kind !== 'vee' && 'diameterMm' in bit && bit.diameterMm > mm);
  return others.flatMap(({ bit, text }): readonly Candidate[] => {
    const once = (to: JobInput['bit']): Candidate => ({
      part: 'bit',
      guess: 1,
      most: 1,
      at: () => ({ ...job, bit: to }),
    });
    const after = bit.kind !== 'vee' && 'diameterMm' in bit && isSmaller(bit.diameterMm);
    return [...(after ? [once([...given, text])] : []), once([text])];
  });
}

function heavier(job: JobInput, weight: Bench['weight'], may: ReadonlySet<RemedyPart>): readonly Candidate[] {
  const most = weight === null ? 0 : Math.floor((weight.max - weight.now) / WEIGHT_STEP + 1e-9);
  if (weight === null || most < 1 || !may.has('weight')) {
    return [];
  }
  const others = (job.axis ?? []).filter((axis) => !/^\s*wght\s*=/u.test(String(axis)));
  return [
    {
      part: 'weight',
      guess: Math.max(1, Math.floor(most / 3)),
      most,
      at: (steps) => ({
        ...job,
        axis: [...others, `wght=${weight.now + steps * WEIGHT_STEP}`] as JobInput['axis'],
      }),
    },
  ];
}

/** Those that come to the same are one. */
function distinct(candidates: readonly Candidate[]): readonly Candidate[] {
  const seen = new Set<string>();
  return candidates.filter((candidate) => {
    const changed = candidate.at(candidate.guess);
    const key = JSON.stringify(changed);
    return changed !== null && !seen.has(key) && seen.add(key) !== undefined;
  });
}
