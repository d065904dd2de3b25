import type { Job } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { runChecks } from '../checks/run-checks.ts';
import { refuseShortBit } from '../cut/refuse-short-bit.ts';
import { type Measured, measure } from '../measured.ts';
import type { Finding } from '../report/finding-schema.ts';
import { findingsOfRounds, ofRound } from '../rounds/findings-of-rounds.ts';
import { type MeasuredRounds, measuredRounds } from '../rounds/measured-rounds.ts';
import { plannedRounds, type RoundPlan } from '../rounds/planned-rounds.ts';
import { BARE_SITE } from '../rounds/site.ts';
import { Stages } from '../stages/stages.ts';

/** What is measured of a job: all at once, or round by round. */
export type MeasuredJob =
  | { readonly is: 'at-once'; readonly all: Measured }
  | { readonly is: 'in-rounds'; readonly all: MeasuredRounds };

/** A drawing measured for a job, and what the checks say: their ways out are proposals that have not been tried. */
export interface Proved {
  readonly drawing: Drawing;
  readonly job: Job;
  readonly plan: RoundPlan;
  readonly measured: MeasuredJob;
  readonly findings: readonly Finding[];
  /** What is kept of it for other jobs. */
  readonly stages: Stages;
}

/**
 * Measures a drawing for a job and runs every check.
 *
 * @param stages results of proofs before, from which is taken what has not changed
 * @throws {JobError} when a bit is too short for the depth and no later bit makes up for it, or for rounds that cannot be made
 */
export function prove(drawing: Drawing, job: Job, stages: Stages = new Stages()): Proved {
  const plan = roundsOf(drawing, job, stages);
  if (plan.rounds.length > 1) {
    const all = measuredRounds(drawing, job, plan, stages);
    const findings = findingsOfRounds(all.rounds, job.rounds.length);
    return { drawing, job, plan, measured: { is: 'in-rounds', all }, findings, stages };
  }
  const [round] = plan.rounds;
  const own = { ...job, depthMm: round?.depthMm ?? job.depthMm, bits: round?.bits ?? job.bits };
  refuseShortBit(own);
  const all = measure(drawing, own, BARE_SITE, stages);
  const found = runChecks(all);
  const findings =
    round === undefined || job.rounds.length === 0
      ? found
      : found.map((finding) => ofRound(finding, 0, [{ ...round, measured: all }], job.rounds.length));
  return { drawing, job, plan, measured: { is: 'at-once', all }, findings, stages };
}

/** The rounds of a job: what each carves of the drawing depends on which colours it names. */
function roundsOf(drawing: Drawing, job: Job, stages: Stages): RoundPlan {
  if (job.rounds.length === 0) {
    return plannedRounds(drawing, job);
  }
  const { rounds, colourOf, colour, colourant, depthMm, bits } = job;
  return stages.of('rounds', [drawing.shapes], { rounds, colourOf, colour, colourant, depthMm, bits }, () =>
    plannedRounds(drawing, job),
  );
}
