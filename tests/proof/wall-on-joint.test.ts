import { type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

/** Two stripes of 40 mm, the joint at 40 mm; fibres across the stripes (90° to the joint). */
const JOB: JobInput = {
  bit: ['flat:1mm'],
  depth: '3mm',
  seal: 'none',
  coats: 0,
  block: [
    'poplar grain:90deg 0mm,0mm 80mm,0mm 80mm,40mm 0mm,40mm',
    'walnut grain:90deg 0mm,40mm 80mm,40mm 80mm,80mm 0mm,80mm',
  ],
};
/** A pocket 30 mm long and `height` high whose lower wall lies `below` mm under the joint. */
const vetted = (below: number, more: JobInput = {}) =>
  judgeDrawing(
    drawingOf([rectangle(0, 0, 30, 10)]),
    'pocket',
    settleJob({ ...JOB, place: `40mm,${35 + below}mm`, board: 'polygons 80x80x20mm', ...more }),
  ).report;

test('a wall exactly on a joint opens the wood behind it: colour runs into that block', () => {
  const { bleed, endGrain } = vetted(0);
  const [poplar, walnut] = bleed.blocks;
  // the straight part of the lower wall is walnut's, 29 mm; both its rounded corners stand in poplar, half a millimetre each
  expect(endGrain.byBlock.map(({ wallExposedMm2 }) => wallExposedMm2 / 3)).toEqual([
    expect.closeTo(31, 9),
    expect.closeTo(29, 9),
  ]);
  expect(poplar?.areaMm2).toBeCloseTo(30 * (poplar?.travelMm.median ?? 0), 0);
  expect(walnut?.travelMm.median).toBeCloseTo(1, 12);
  expect(walnut?.areaMm2).toBeCloseTo(29 * 1, 6);
});

test('moving the pocket by a hair to either side changes the colour in the wood behind by a hair', () => {
  const area = (below: number): number => vetted(below).bleed.blocks[1]?.areaMm2 ?? 0;
  expect(area(0.001)).toBeCloseTo(area(0), 0);
  // stopped short of the joint the wood behind the wall is poplar’s, and the glue line keeps walnut clean
  expect(area(-0.001)).toBe(0);
});

test('fibres along the joint open nothing there', () => {
  const along = JOB.block?.map((text) => String(text).replace('grain:90deg', 'grain:0deg'));
  expect(vetted(0, { block: along }).bleed.blocks[1]?.areaMm2 ?? 0).toBeCloseTo(0, 9);
});
