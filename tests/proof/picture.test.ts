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
