import { type Job, refuseReading } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { runChecks } from './checks/run-checks.ts';
import { refuseShortBit } from './cut/refuse-short-bit.ts';
import { seenTo } from './fixes/seen-to.ts';
import { measure } from './measured.ts';
import { type Picture, pictureOf } from './picture.ts';
import { buildReport } from './report/build-report.ts';
import type { Report } from './report/report.ts';

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
  refuseShortBit(job);
  const measured = measure(drawing, job);
  const { findings, notices } = seenTo(runChecks(measured), job);
  const told = { ...measured, drawing: { ...drawing, notices: [...drawing.notices, ...notices] } };
  return { report: buildReport(told, name, findings), picture: pictureOf(told, findings) };
}
