import { type Job, type JobInput, shopBit } from '@pourproof/job';
import { applyFix, type Finding, type FixStep } from '@pourproof/proof';
import type { Source } from '../source.ts';
import type { VetOptions } from '../vet.ts';
import type { Candidate } from './candidate.ts';
import { outlineCandidates } from './outline-candidates.ts';
import { amountOf, PART_OF } from './parts-of-steps.ts';
import type { RemedyPart } from './remedies.ts';
import { otherOrders } from './round-orders.ts';
import { unproposed } from './unproposed.ts';

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
  const offered = open.flatMap((finding) =>
    finding.fix.options.flatMap((fix): readonly Candidate[] => {
      const { also: _, leaves: __, brings: ___, couponRows: ____, ...step } = fix;
      const part = PART_OF[step.do];
      if (part === null) {
        return outlineCandidates(job, settled, finding, step);
      }
      const amount = amountOf(step, settled);
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
    }),
  );
  const others = [
    ...open.flatMap((finding) => unproposed(finding, job, settled, context)),
    ...bitsOfShop(job, settled, may),
    ...heavier(job, weight, may),
    ...(open.length > 0 ? otherOrders(job, settled) : []),
  ];
  return distinct([...offered, ...others].filter(({ part }) => may.has(part)));
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
