import { type Job, JobError, refuseReading } from '@pourproof/job';
import type { Drawing, Notice } from '@pourproof/plane';
import { scaledDrawing } from './fixes/changed-drawing.ts';
import { type Proved, prove } from './fixes/prove.ts';
import { seenTo } from './fixes/seen-to.ts';
import type { Redrawing } from './fixes/trials.ts';
import { triedFindings } from './fixes/tried-findings.ts';
import { type Picture, pictureOf } from './picture.ts';
import { buildReport } from './report/build-report.ts';
import type { Finding } from './report/finding-schema.ts';
import type { Report } from './report/report.ts';
import { mergedPicture } from './rounds/merged-picture.ts';
import { mergedReport } from './rounds/merged-report.ts';
import { noticesInRounds } from './rounds/planned-rounds.ts';
import { seedOf, selfCheck } from './self-check/self-check.ts';
import { SelfCheckError } from './self-check/self-check-error.ts';
import { Stages } from './stages/stages.ts';

/** What vetting a drawing gives: the report, and the shapes to draw it with; plain data throughout. */
export interface Proof {
  readonly report: Report;
  readonly picture: Picture;
}

/**
 * Vets a drawing for a job: measures it, runs every check, tries their ways out and gives the verdict. Ways out that ask for another
 * size are tried on the drawing scaled.
 *
 * @param name file name, or the text that was set, for the report
 * @param stages results of proofs before, from which is taken what has not changed
 * @throws {JobError} when a bit is too short for the depth and no later bit makes up for it, when the job says how artwork is read (as
 *   `width` does) and was not settled for what the drawing was read from, or when it calls a finding seen to that this does not cure
 * @throws {SelfCheckError} when the figures do not balance, which is a fault of pourproof: none of them is told
 * @example
 * const job = settleJob({ bit: ['flat:1/8in'], depth: '3.2mm', wood: 'maple', seal: 'shellac' });
 * const { report } = vetDrawing(readArtwork(bytes, 'sign.svg'), 'sign.svg', job);
 * report.verdict; // 'clear', 'caution' or 'stop'
 * @public
 */
export function vetDrawing(drawing: Drawing, name: string, job: Job, stages: Stages = new Stages()): Proof {
  refuseUnread(job);
  const steps = vettingSteps(drawing, name, job, stages);
  // one drawing for each size: what was measured of it is kept by that
  const sized = new Map([[1, drawing]]);
  let step = steps.next();
  while (step.done !== true) {
    const { scaledBy, isReadAnew } = step.value;
    const scaled = sized.get(scaledBy) ?? scaledDrawing(drawing, scaledBy);
    sized.set(scaledBy, scaled);
    step = steps.next(isReadAnew ? 'unread' : scaled);
  }
  return step.value;
}

/**
 * The same without trying ways out, in a fraction of the time: the verdict and the findings are those of {@link vetDrawing}, but the
 * ways out are what the checks propose, so that some may bring worse.
 *
 * @param waysOut `none` leaves them out altogether: some take longer to find than all the rest
 * @throws {JobError} as {@link vetDrawing} does
 * @throws {ProofStopped} when whoever follows the stages stops it
 * @public
 */
export function judgeDrawing(
  drawing: Drawing,
  name: string,
  job: Job,
  stages: Stages = new Stages(),
  waysOut: 'proposed' | 'none' = 'proposed',
): Proof {
  refuseUnread(job);
  return stages.asking(() => {
    const proved = checked(prove(drawing, job, stages));
    const findings = waysOut === 'none' ? withoutWaysOut(proved) : proved.findings;
    return proofOf(proved, findings, name);
  });
}

/**
 * The findings alone, without report and picture, whose ways out are what the checks propose: for whoever tries many jobs. What the maker
 * has seen to is left out.
 *
 * @throws {JobError} as {@link vetDrawing} does
 * @throws {ProofStopped} when whoever follows the stages stops it
 */
export function findingsIn(drawing: Drawing, job: Job, stages: Stages = new Stages()): readonly Finding[] {
  refuseUnread(job);
  const { findings } = stages.asking(() => prove(drawing, job, stages));
  return findings.filter(({ code }) => !job.seenTo.includes(code));
}

/**
 * {@link vetDrawing} step by step, for whoever can read the artwork anew: it asks for the drawing of each job that it tries.
 *
 * @param stages results of proofs before, from which is taken what has not changed
 * @param onJudged given the proof without ways out, before they are tried
 * @throws {JobError} as {@link vetDrawing} does
 */
export function* vettingSteps(
  drawing: Drawing,
  name: string,
  job: Job,
  stages: Stages = new Stages(),
  onJudged?: (judged: Proof) => void,
): Redrawing<Proof> {
  const steps = vetting(drawing, name, job, stages, onJudged);
  let step = stages.asking(() => steps.next());
  while (step.done !== true) {
    const redrawn = yield step.value;
    step = stages.asking(() => steps.next(redrawn));
  }
  return step.value;
}

function* vetting(
  drawing: Drawing,
  name: string,
  job: Job,
  stages: Stages,
  onJudged: ((judged: Proof) => void) | undefined,
): Redrawing<Proof> {
  const proved = checked(prove(drawing, job, stages));
  const early =
    onJudged === undefined ? null : unlessRefused(() => proofOf(proved, withoutWaysOut(proved), name));
  if (early !== null) {
    onJudged?.(early);
  }
  return proofOf(proved, yield* triedFindings(proved), name);
}

/** No early answer for a job that calls a finding seen to that this does not cure: its refusal names the ways out that were tried. */
function unlessRefused(attempt: () => Proof): Proof | null {
  try {
    return attempt();
  } catch (error) {
    if (error instanceof JobError) {
      return null;
    }
    throw error;
  }
}

/** Whether a finding may be seen to hangs on its ways out: those that the job calls seen to keep theirs. */
function withoutWaysOut({ findings, job }: Proved): readonly Finding[] {
  return findings.map((finding) =>
    job.seenTo.includes(finding.code) ? finding : { ...finding, fix: { options: [] } },
  );
}

function refuseUnread(job: Job): void {
  if (job.source === null || job.source === 'drawing') {
    refuseReading(job);
  }
}

function proofOf(proved: Proved, tried: readonly Finding[], name: string): Proof {
  const { job, drawing, plan, measured } = proved;
  const { findings, notices } = seenTo(tried, proved.findings, drawing.notices, job);
  if (measured.is === 'at-once') {
    const told = { ...measured.all, drawing: withNotices(drawing, notices) };
    return { report: buildReport(told, name, findings), picture: pictureOf(told, findings) };
  }
  const read = { ...drawing, notices: noticesInRounds(drawing.notices) };
  const told = withNotices(read, [...plan.notices, ...notices]);
  return {
    report: mergedReport({ ...measured.all, drawing: told, job, colours: plan.colours, findings }, name),
    picture: mergedPicture(measured.all, findings),
  };
}

function withNotices(drawing: Drawing, notices: readonly Notice[]): Drawing {
  return { ...drawing, notices: [...drawing.notices, ...notices] };
}

/** A proof whose figures balance; of one whose figures do not, none is told. */
function checked(proved: Proved): Proved {
  const seed = seedOf(proved.measured);
  const misses = selfCheck(proved.measured, seed);
  if (misses.length > 0) {
    throw new SelfCheckError(misses, seed);
  }
  return proved;
}
