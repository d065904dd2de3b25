import { type JobFile, settleJobWith } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import { parseMeasure } from '@pourproof/plane';
import { type FixOption, sealWords } from '@pourproof/proof';
import type { JobPart } from './changed-job.ts';
import { lengthLike } from './length-like.ts';
import { scaledSize } from './scaled-size.ts';

/** The part of the job that a way out asks for, and the words on its button. */
export interface JobChange {
  readonly part: JobPart;
  readonly label: string;
}

/** What the change is made to. */
export interface ChangedThing {
  /** Code of the finding that the way out is from. */
  readonly code: string;
  readonly job: Partial<JobFile>;
  /** Fibres of the job against the artwork, degrees. */
  readonly grainDeg: number;
  readonly materials: MaterialsBook;
  readonly isLettering: boolean;
}

type Changer = (option: FixOption, thing: ChangedThing) => JobPart | null;

/** What each kind of way out does to the job, and what its button says. */
const CHANGES: Readonly<Partial<Record<FixOption['do'], readonly [label: string, change: Changer]>>> = {
  'use-bit': ['Add this bit', bitPart],
  scale: ['Scale it', ({ value }, { job, isLettering }) => scaledSize(job, Number(value), isLettering)],
  'turn-grain': ['Turn it', turnedPart],
  'change-seal': ['Use this seal', sealPart],
  deepen: ['Cut deeper', deeperPart],
  'cut-shallower': [
    'Cut shallower',
    ({ value }, { job }) => ({ depth: lengthLike(Number(value), job.depth) }),
  ],
  'level-less': ['Level less', lessPart],
  'fewer-coats': ['Fewer coats', ({ value }) => ({ coats: Number(value) })],
  wait: ['Wait longer', waitPart],
  'use-scale': ['Use this scale', ({ value }, { materials }) => named('weigh', value, materials.scales)],
  'use-resin': ['Use this resin', ({ value }, { materials }) => named('resin', value, materials.resins)],
};

/** What a way out changes in the job; `null` where it is work on the drawing, or where no value of the job expresses it. */
export function jobChange(option: FixOption, thing: ChangedThing): JobChange | null {
  const [label, change] = CHANGES[option.do] ?? [];
  const part = change?.(option, thing) ?? null;
  return part === null || label === undefined ? null : { part, label };
}

function bitPart({ value, unit }: FixOption, { code, job }: ChangedThing): JobPart | null {
  // there another V is meant, wider or with a finer tip, in the place of the one at hand
  return code === 'vee-ends-early' || unit === 'mm wide'
    ? null
    : { bit: [...(job.bit ?? []), `flat:${value}mm`] };
}

function turnedPart({ value }: FixOption, { job, grainDeg }: ChangedThing): JobPart {
  const byDeg = Number(value);
  if (job.board !== undefined) {
    const turnDeg = parseMeasure(job.turn ?? '0deg', 'angle').value + byDeg;
    return { turn: `${Number(turnDeg.toFixed(3))}deg` };
  }
  // turning the artwork counter-clockwise is turning the fibres clockwise under it
  return { grain: `${(((grainDeg - byDeg) % 180) + 180) % 180}deg` };
}

// the way out names the seal in words, so the seal is found by saying the same words of each
function sealPart({ value }: FixOption, { job, materials }: ChangedThing): JobPart | null {
  const coats = Math.max(1, job.coats ?? 1);
  for (const [seal, row] of Object.entries(materials.sealers)) {
    if (value === sealWords(coats, row)) {
      return { seal, coats, sealHours: `${row.readyHours.high}h` };
    }
  }
  return null;
}

function deeperPart({ value }: FixOption, { job, materials }: ChangedThing): JobPart {
  return { depth: lengthLike(settleJobWith(materials, job).depthMm + Number(value), job.depth) };
}

function lessPart({ value }: FixOption, { job, materials }: ChangedThing): JobPart {
  return { level: lengthLike(settleJobWith(materials, job).levelMm - Number(value), job.level) };
}

function waitPart({ value }: FixOption, { job, materials }: ChangedThing): JobPart {
  const hours = settleJobWith(materials, job).sealHours + Number(value);
  return { sealHours: `${Number(hours.toFixed(2))}h` };
}

function named(
  key: 'weigh' | 'resin',
  name: FixOption['value'],
  rows: Readonly<Record<string, { readonly name: string }>>,
): JobPart | null {
  const id = Object.keys(rows).find((each) => rows[each]?.name === name);
  return id === undefined ? null : { [key]: id };
}
