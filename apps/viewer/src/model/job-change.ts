import { type TypedJob, typedJob } from '@pourproof/job';
import { applyFix, FIX_SETTINGS, type Fix, type FixContext } from '@pourproof/proof';
import type { JobPart } from './changed-job.ts';

/** The part of the job that a way out asks for, and the words on its button. */
export interface JobChange {
  readonly part: JobPart;
  readonly label: string;
}

/** What the button of each kind of way out says. */
const LABELS: Readonly<Partial<Record<Fix['do'], string>>> = {
  'use-bit': 'Add this bit',
  scale: 'Scale it',
  'use-vee': 'Use this V',
  'use-tip': 'Use this tip',
  track: 'Space the letters',
  'space-lines': 'Space the lines',
  turn: 'Turn it',
  move: 'Move it',
  'change-seal': 'Use this seal',
  deepen: 'Cut deeper',
  'cut-shallower': 'Cut shallower',
  'level-less': 'Level less',
  'level-by': 'Level this way',
  'fewer-coats': 'Fewer coats',
  wait: 'Wait longer',
  'pour-sooner': 'Pour sooner',
  'use-scale': 'Use this scale',
  'change-temperature': 'Set this temperature',
  'less-pigment': 'Use less pigment',
  'pour-proud': 'Pour this proud',
  'use-resin': 'Use this resin',
  'thicker-board': 'Use this thickness',
  'join-ends': 'Join these ends',
  'pour-in-rounds': 'Pour in rounds',
};

/** What a way out changes in a job; `null` where no setting of the job expresses it. */
export function jobChange(fix: Fix, job: TypedJob, context: FixContext): JobChange | null {
  const fixed = applyFix(job, fix, context);
  const label = LABELS[fix.do];
  if (fixed === null || label === undefined) {
    return null;
  }
  const typed = typedJob(fixed);
  const keys = [fix, ...(fix.also ?? [])].flatMap((step) => FIX_SETTINGS[step.do]);
  const changed = [...new Set(keys)].filter((key) => typed[key] !== job[key]);
  return { part: Object.fromEntries(changed.map((key) => [key, typed[key]])), label };
}
