import { type JobInput, settleJob } from '@pourproof/job';
import { type FindingCode, judgeDrawing } from '@pourproof/proof';
import { drawingOf, rectangle } from './drawing-of.ts';

/** A job in which nothing speaks against anything. */
export const CALM: JobInput = {
  bit: ['flat:3mm'],
  depth: '3mm',
  wood: 'walnut',
  seal: 'epoxy',
  coats: 1,
  sealHours: '24h',
  // so that there is enough to weigh
  boards: 10,
};
export const CALM_ON_BOARD: JobInput = { ...CALM, wood: undefined, board: 'plain 300x180x20mm walnut' };
/** The first finding of a code on a calm job with a few settings changed. */
export const findOnCalm = (
  drawing: ReturnType<typeof drawingOf>,
  code: FindingCode,
  job: JobInput = {},
  calm: JobInput = CALM,
) =>
  judgeDrawing(drawing, 'test', settleJob({ ...calm, ...job })).report.findings.find(
    (finding) => finding.code === code,
  );

export const POCKET = drawingOf([rectangle(0, 0, 40, 20)]);
