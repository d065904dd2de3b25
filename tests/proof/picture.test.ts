import { settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

const judged = () =>
  judgeDrawing(
    drawingOf([rectangle(0, 0, 30, 4)]),
    'test',
    settleJob({
      bit: ['flat:2mm'],
      depth: '3mm',
      wood: 'poplar',
      seal: 'none',
      grain: '0deg',
    }),
  );

test('the picture marks the walls that the finding of bleeding walls names', () => {
  const { picture, report } = judged();
  const finding = report.findings.find(({ code }) => code === 'high-bleed-wall');
  expect(finding?.where.length).toBeGreaterThan(0);
  expect(picture.bleedWalls.map((line) => [...line])).toEqual(
    finding?.where.flatMap(({ outline }) => outline.map((line) => line.flat())),
  );
});

test('the picture tells what levelling does to strokes grade by grade, and what is not cut at all', () => {
  const { picture } = judgeDrawing(
    drawingOf([rectangle(0, 0, 30, 4), rectangle(0, 20, 30, 1)]),
    'test',
    settleJob({ bit: ['flat:2mm'], depth: '3mm', wood: 'maple', level: '0.5mm' }),
  );
  const grades = picture.levelling?.grades ?? [];
  expect(grades.map(({ grade }) => grade)).toEqual(['lost', 'spoilt', 'close', 'holds', 'uncut']);
  expect(grades.map(({ lines }) => lines.length > 0)).toEqual([false, false, false, true, true]);
  expect(grades.at(-1)?.lengthMm).toBeGreaterThan(25);
});
