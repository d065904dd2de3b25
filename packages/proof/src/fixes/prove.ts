import type { Job } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { runChecks } from '../checks/run-checks.ts';
import { refuseShortBit } from '../cut/refuse-short-bit.ts';
import { type Measured, measure } from '../measured.ts';
import type { Finding } from '../report/finding-schema.ts';
import { findingsOfRounds } from '../rounds/findings-of-rounds.ts';
import { type MeasuredRounds, measuredRounds } from '../rounds/measured-rounds.ts';
import { plannedRounds, type RoundPlan } from '../rounds/planned-rounds.ts';
import { BARE_SITE } from '../rounds/site.ts';

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
}

/**
 * Measures a drawing for a job and runs every check.
 *
 * @param like another job that has been measured, from which is taken what both have in common
 * @throws {JobError} when a bit is too short for the depth and no later bit makes up for it, or for rounds that cannot be made
 */
export function prove(drawing: Drawing, job: Job, like: MeasuredJob | null = null): Proved {
  const plan = plannedRounds(drawing, job);
  if (plan.rounds.length > 1) {
    const all = measuredRounds(drawing, job, plan);
    const findings = findingsOfRounds(all.rounds, job.rounds.length);
    return { drawing, job, plan, measured: { is: 'in-rounds', all }, findings };
  }
  const own = { ...job, depthMm: plan.rounds[0]?.depthMm ?? job.depthMm };
  refuseShortBit(own);
  const all = measure(drawing, own, BARE_SITE, like?.is === 'at-once' ? like.all : null);
  return { drawing, job, plan, measured: { is: 'at-once', all }, findings: runChecks(all) };
}
