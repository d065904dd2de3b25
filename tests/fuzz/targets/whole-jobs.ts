import { readSvg, refuseEmpty, refuseSize } from '@pourproof/artwork';
import { settleJob } from '@pourproof/job';
import { judgeDrawing, reportSchema } from '@pourproof/proof';
import { reportText } from '@pourproof/wording';
import fc from 'fast-check';
import { answerOf, checkNumbers, checkWords, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';
import { jobInput } from './jobs.ts';

const number = fc.integer({ min: 1, max: 800 }).map((n) => n / 10);
const shape = fc.oneof(
  fc
    .tuple(number, number, number, number)
    .map(([x, y, w, h]) => `<rect x="${x}" y="${y}" width="${w}" height="${h}"/>`),
  fc.tuple(number, number, number).map(([x, y, r]) => `<circle cx="${x}" cy="${y}" r="${r}"/>`),
  fc
    .tuple(number, number, number, number, number)
    .map(([x, y, u, v, w]) => `<path d="M${x} ${y}L${u} ${v}" stroke="#000" stroke-width="${w / 10}"/>`),
  fc
    .tuple(number, number, number, number, number, number)
    .map((all) => `<polygon points="${all.join(' ')}"/>`),
);

/** Small drawings under jobs of any settings: a report that meets its schema, with finite numbers and plain words. */
export const wholeJobs: FuzzTarget = fuzzTarget(
  'whole-jobs',
  { limitMs: 60_000, quick: 4 },
  fc.tuple(fc.array(shape, { minLength: 1, maxLength: 3 }), jobInput),
  ([shapes, input]) => {
    const job = answerOf(() =>
      settleJob({ bit: ['flat:2mm'], depth: '3mm', wood: 'cherry', ...input }, { source: 'file' }),
    );
    if (job === null) {
      return;
    }
    const drawing = readSvg(
      `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${shapes.join('')}</svg>`,
    );
    const proof = answerOf(() => {
      refuseEmpty(drawing, 'a.svg');
      refuseSize(drawing, 'a.svg');
      return judgeDrawing(drawing, 'a.svg', job);
    });
    if (proof === null) {
      return;
    }
    checkNumbers(proof.report, 'report');
    const read = reportSchema.safeParse(JSON.parse(JSON.stringify(proof.report)));
    if (!read.success) {
      throw new Error(`the report does not meet its schema: ${read.error.message.slice(0, 300)}`);
    }
    checkWords(reportText({ ...proof, job }, { columns: 80 }));
  },
);
