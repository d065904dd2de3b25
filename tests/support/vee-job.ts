import { type JobFile, type JobInput, settleJob } from '@pourproof/job';
import { type FindingCode, judgeDrawing, type Report } from '@pourproof/proof';
import { drawingOf, rectangle } from './drawing-of.ts';

/** A V that goes to its depth in walnut without a seal. */
export const VEE: JobFile = {
  schema: 'pourproof/job@1',
  bit: ['vee:60deg:12mm'],
  depth: '10mm',
  wood: 'walnut',
  seal: 'none',
  level: '0.3mm',
};
export const BAR = rectangle(0, 0, 30, 4);

export const reportOf = (rings: readonly number[][], job: JobInput = {}, turnDeg = 0): Report =>
  judgeDrawing(drawingOf(rings, { turnDeg }), 'test', settleJob({ ...VEE, ...job })).report;
export const findInVee = (rings: readonly number[][], code: FindingCode, job: JobInput = {}) =>
  reportOf(rings, job).findings.find((finding) => finding.code === code);
export const SHRINKAGE = 0.03;
