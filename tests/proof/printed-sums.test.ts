import { settleJob } from '@pourproof/job';
import { resinColours } from '@pourproof/materials';
import { judgeDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between, jobs } from '../arbitraries.ts';
import { drawingOf, rectangle } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';

/** A printed amount as a whole number of thousandths of a gram, so that sums are exact. */
const thousandths = (grams: number): number => Math.round(Number(grams.toFixed(3)) * 1000);

test('on every scale the sheet adds up exactly: parts to cups, cups to colours, running totals to the cup', () => {
  fc.assert(
    fc.property(jobs, between(5, 200), (job, size) => {
      const drawing = drawingOf([rectangle(0, 0, size, 12)]);
      const { pour } = judgeDrawing(drawing, 'sum', settleJob(job)).report;
      for (const colour of pour.colours) {
        const { cups } = colour;
        expect(thousandths(cups.partAG) + thousandths(cups.partBG) + thousandths(cups.pigmentG)).toBe(
          thousandths(cups.totalG),
        );
        expect(thousandths(colour.partAG) + thousandths(colour.partBG)).toBe(thousandths(colour.massG));
        expect(cups.count * thousandths(cups.partAG)).toBe(thousandths(colour.partAG));
        expect(cups.runningG.at(-1)).toBe(cups.totalG);
        for (const grams of [cups.partAG, cups.partBG, cups.pigmentG]) {
          const steps = grams / pour.stepG;
          expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
        }
      }
    }),
    cases(40),
  );
});

test('colours share out the cut: what is drawn later is poured, and nothing is poured twice', () => {
  const under = rectangle(0, 0, 40, 20);
  const over = rectangle(10, 5, 20, 10);
  const drawing = drawingOf([under, over]);
  const [first, second] = drawing.shapes;
  const [black, red] = Object.keys(resinColours).slice(0, 2);
  const painted = {
    ...drawing,
    shapes: [
      { ...first, colour: black },
      { ...second, colour: red },
    ] as typeof drawing.shapes,
  };
  const job = settleJob({ bit: ['flat:2mm'], weigh: 'fine' });
  const one = judgeDrawing(drawing, 'one', job).report.pour.colours;
  const two = judgeDrawing(painted, 'two', job).report.pour.colours;
  expect(one).toHaveLength(1);
  expect(two.map((colour) => colour.name)).toEqual([black, red]);
  const sum = two.reduce((total, colour) => total + colour.volumeMl, 0);
  // the border between the colours is no wall, so the seal and end-grain shares differ only by nothing here: bare wood
  expect(sum).toBeCloseTo(one[0]?.volumeMl ?? 0, 3);
  // 20 × 10 mm of 40 × 20 mm, less what a round bit leaves in the four outer corners
  expect((two[1]?.volumeMl ?? 0) / sum).toBeCloseTo(200 / (800 - (4 - Math.PI)), 3);
});
