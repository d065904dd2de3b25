import { type Job, refuseReading } from '@pourproof/job';
import type { Drawing, Notice } from '@pourproof/plane';
import { runChecks } from './checks/run-checks.ts';
import { refuseShortBit } from './cut/refuse-short-bit.ts';
import { seenTo } from './fixes/seen-to.ts';
import { measure } from './measured.ts';
import { type Picture, pictureOf } from './picture.ts';
import { buildReport } from './report/build-report.ts';
import type { Report } from './report/report.ts';
import { findingsOfRounds } from './rounds/findings-of-rounds.ts';
import { measuredRounds } from './rounds/measured-rounds.ts';
import { mergedPicture } from './rounds/merged-picture.ts';
import { mergedReport } from './rounds/merged-report.ts';
import { plannedRounds, type RoundPlan } from './rounds/planned-rounds.ts';

/** What vetting a drawing gives: the report, and the shapes to draw it with; plain data throughout. */
export interface Proof {
  readonly report: Report;
  readonly picture: Picture;
}

/**
 * Vets a drawing for a job: measures it, runs every check and gives the verdict.
 *
 * @param name file name, or the text that was set, for the report
 * @throws {JobError} when a bit is too short for the depth and no later bit makes up for it, or when the job says how artwork is read (as
 *   `width` does) and was not settled for what the drawing was read from, or when it calls a finding seen to that this does not cure
 * @example
 * const job = settleJob({ bit: ['flat:1/8in'], depth: '3.2mm', wood: 'maple', seal: 'shellac' });
 * const { report } = vetDrawing(readArtwork(bytes, 'sign.svg'), 'sign.svg', job);
 * report.verdict; // 'clear', 'caution' or 'stop'
 */
export function vetDrawing(drawing: Drawing, name: string, job: Job): Proof {
  if (job.source === null || job.source === 'drawing') {
    refuseReading(job);
  }
  const plan = plannedRounds(drawing, job);
  return plan.rounds.length > 1 ? inRounds(drawing, name, job, plan) : atOnce(drawing, name, job, plan);
}

function atOnce(drawing: Drawing, name: string, job: Job, plan: RoundPlan): Proof {
  const own = { ...job, depthMm: plan.rounds[0]?.depthMm ?? job.depthMm };
  refuseShortBit(own);
  const measured = measure(drawing, own);
  const { findings, notices } = seenTo(runChecks(measured), job);
  const told = { ...measured, drawing: withNotices(drawing, notices) };
  return { report: buildReport(told, name, findings), picture: pictureOf(told, findings) };
}

function inRounds(drawing: Drawing, name: string, job: Job, plan: RoundPlan): Proof {
  const measured = measuredRounds(drawing, job, plan);
  const { findings, notices } = seenTo(findingsOfRounds(measured.rounds, job.rounds.length), job);
  const told = withNotices(drawing, [...plan.notices, ...notices]);
  return {
    report: mergedReport({ ...measured, drawing: told, job, colours: plan.colours, findings }, name),
    picture: mergedPicture(measured, findings),
  };
}

function withNotices(drawing: Drawing, notices: readonly Notice[]): Drawing {
  return { ...drawing, notices: [...drawing.notices, ...notices] };
}
