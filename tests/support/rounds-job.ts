import { type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { rectangle } from './drawing-of.ts';
import { type Painted, painted } from './painted.ts';

/** A job with nothing against it, whose colours are cut in rounds. */
export const SOUND: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'maple',
  grain: '0deg',
  seal: 'epoxy',
  sealHours: '24h',
  level: '0.5mm',
  weigh: 'fine',
  boards: 6,
  units: 'mm',
};
export const [BLACK, RED, BLUE] = ['#000000', '#ff0000', '#0000ff'];

export const vettedRounds = (shapes: readonly Painted[], job: JobInput = {}): Report =>
  judgeDrawing(painted(shapes), 'test', settleJob({ ...SOUND, ...job })).report;
export const codes = ({ findings }: Report): readonly string[] => findings.map(({ code }) => code);

/** A red square in the middle of a black one, and a blue one apart. */
export const within: readonly Painted[] = [
  [BLACK, rectangle(0, 0, 40, 40)],
  [RED, rectangle(10, 10, 20, 20)],
];
export const apart: readonly Painted[] = [
  [BLACK, rectangle(0, 0, 20, 20)],
  [RED, rectangle(40, 0, 20, 20)],
];
