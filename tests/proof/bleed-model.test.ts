import { type JobInput, settleJob } from '@pourproof/job';
import { bleedClass } from '@pourproof/materials';
import { judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

/** The reference of practice: 1/8 in deep, wall across the grain, one coat, a black colour. */
const REFERENCE: JobInput = { bit: ['flat:1mm'], depth: '1/8in', coats: 1, colour: 'black' };
const ACROSS = drawingOf([rectangle(0, 0, 4, 30)]);
const told = (job: JobInput) => {
  const { bleed, findings } = judgeDrawing(ACROSS, 'slot', settleJob({ ...REFERENCE, ...job })).report;
  const [block] = bleed.blocks;
  if (block === undefined) {
    throw new Error('the slot lies in a block');
  }
  return { ...block, wall: findings.find(({ code }) => code === 'high-bleed-wall')?.severity ?? 'silent' };
};

const WOODS = ['poplar', 'cherry', 'maple', 'walnut'] as const;
// common practice, as handed over: every wood bleeds bare, poplar worst; a day-old epoxy stops all of them
const ROWS: readonly (readonly [string, JobInput, readonly (readonly [number, string])[]])[] = [
  [
    'no seal',
    { seal: 'none' },
    [
      [6, 'severe'],
      [3, 'severe'],
      [2, 'severe'],
      [1, 'moderate'],
    ],
  ],
  [
    'sanding sealer',
    { seal: 'sanding-sealer', sealHours: '2h' },
    [
      [3.6, 'severe'],
      [1.8, 'moderate'],
      [1.2, 'moderate'],
      [0.6, 'slight'],
    ],
  ],
  [
    'shellac',
    { seal: 'shellac', sealHours: '1h' },
    [
      [2.1, 'severe'],
      [1.05, 'moderate'],
      [0.7, 'slight'],
      [0.35, 'clean'],
    ],
  ],
  [
    'epoxy, 1 h',
    { seal: 'epoxy', sealHours: '1h' },
    [
      [1.08, 'moderate'],
      [0.54, 'slight'],
      [0.36, 'clean'],
      [0.18, 'clean'],
    ],
  ],
  [
    'epoxy, 24 h',
    { seal: 'epoxy', sealHours: '24h' },
    [
      [0.12, 'clean'],
      [0.06, 'clean'],
      [0.04, 'clean'],
      [0.02, 'clean'],
    ],
  ],
];
/** What the finding about walls says of each class. */
const SAYS: Readonly<Record<string, string>> = {
  severe: 'stop',
  moderate: 'caution',
  slight: 'silent',
  clean: 'silent',
};

describe('the twenty cells of common practice, from the job to the finding', () => {
  test.each(ROWS)('%s', (_, job, cells) => {
    cells.forEach(([medianMm, name], column) => {
      const cell = told({ ...job, wood: WOODS[column] });
      // bound: the last digit of the table's products
      expect(cell.travelMm.median).toBeCloseTo(medianMm, 9);
      expect(bleedClass(cell.travelMm.median)).toBe(name);
      expect(cell.wall).toBe(SAYS[name]);
    });
  });

  test('poplar, cherry, maple, walnut: worst to best at every seal', () => {
    for (const [, job] of ROWS) {
      const medians = WOODS.map((wood) => told({ ...job, wood }).travelMm.median);
      expect(medians).toEqual(medians.toSorted((a, b) => b - a));
      expect(new Set(medians).size).toBe(4);
    }
  });
});

// at a wall across the grain, with a streak that is fully visible
test.each([
  ['poplar', 'none', '24h', 'black', 0.95],
  ['cherry', 'none', '24h', 'blue', 0.777],
  ['maple', 'none', '24h', 'black', 0.632],
  ['maple', 'epoxy', '1h', 'black', 0.165],
  ['poplar', 'epoxy', '24h', 'black', 0.058],
] as const)('the index of %s under %s (%s) in %s is %d', (wood, seal, sealHours, colour, index) => {
  const { streak } = told({ wood, seal, sealHours, colour });
  expect(streak?.deltaE00).toBeGreaterThan(9);
  expect(streak?.index).toBeCloseTo(index, 3);
});

test('the band before any coupon is a factor of 5.4 either way', () => {
  const { travelMm } = told({ wood: 'maple', seal: 'shellac' });
  expect(travelMm.high / travelMm.median).toBeCloseTo(5.4, 1);
  expect(travelMm.median / travelMm.low).toBeCloseTo(travelMm.high / travelMm.median, 8);
});

test('an oiled board is a stop that no seal clears, not a score', () => {
  const { report } = judgeDrawing(
    ACROSS,
    'slot',
    settleJob({ ...REFERENCE, wood: 'walnut', seal: 'epoxy', sealHours: '24h', oiled: true }),
  );
  const oil = report.findings.find(({ code }) => code === 'oil-in-wood');
  expect(oil?.severity).toBe('stop');
  expect(oil?.fix.options.map((option) => option.do)).not.toContain('change-seal');
});
