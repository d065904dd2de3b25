import { type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

const boardOf = (job: JobInput, rings = [rectangle(0, 0, 40, 40)]): Report['board'] =>
  judgeDrawing(
    drawingOf(rings),
    'test',
    settleJob({ bit: ['flat:2mm'], depth: '3mm', board: 'plain 100x80x20mm maple', ...job }),
  ).report.board;

test('the report tells the least wood below, beside and over a hole in the back, and where', () => {
  const board = boardOf({ place: '30mm,40mm', keepClear: ['hole 40mm,45mm 8mm back:14.5mm'] });
  expect(board?.leastFloor?.woodMm).toBeCloseTo(17, 9);
  // the square ends 10 mm beside the left edge; artwork counts from its own middle
  expect(board?.leastRim).toMatchObject({ woodMm: expect.closeTo(10, 9), beside: 'edge' });
  const { fromMm = [0, 0], toMm = [0, 0] } = board?.leastRim ?? {};
  expect(Math.hypot(toMm[0] - fromMm[0], toMm[1] - fromMm[1])).toBeCloseTo(10, 9);
  expect([fromMm[0], toMm[0]].toSorted((a, b) => a - b)).toEqual([
    expect.closeTo(-10, 9),
    expect.closeTo(0, 9),
  ]);
  expect(board?.leastOverHole?.woodMm).toBeCloseTo(2.5, 9);
  const [x = 0, y = 0] = board?.leastOverHole?.atMm ?? [];
  // the hole stands 30 mm right of the square's left side and 25 mm below its upper one
  expect(Math.hypot(x - 30, y - 25)).toBeLessThanOrEqual(4 + 1e-9);
});

test('where nothing is cut there is no floor, and without a hole no wood over it', () => {
  const board = boardOf({}, [rectangle(0, 0, 40, 1)]);
  expect(board?.leastFloor).toBeNull();
  expect(board?.leastOverHole).toBeNull();
  expect(board?.leastRim).toBeNull();
});
