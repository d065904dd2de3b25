import { expect, test } from 'vitest';
import { bleedClass, bleedTravel, visibleProbability } from './bleed-travel.ts';
import { cited } from './cited.ts';
import type { SealId } from './sealer.ts';
import { type WoodId, woods } from './wood.ts';

const REFERENCE_WOODS: readonly WoodId[] = ['poplar', 'cherry', 'maple', 'walnut'];

// Median travel in mm and class, common practice: every wood bleeds unsealed (poplar worst, walnut least), a
// day-old
// epoxy seal stops all of them. Coating resin at 25 °C, one coat.
const CELLS: readonly [SealId, number, readonly [number, string][]][] = [
  [
    'none',
    0,
    [
      [6, 'severe'],
      [3, 'severe'],
      [2, 'severe'],
      [1, 'moderate'],
    ],
  ],
  [
    'sanding-sealer',
    2,
    [
      [3.6, 'severe'],
      [1.8, 'moderate'],
      [1.2, 'moderate'],
      [0.6, 'slight'],
    ],
  ],
  [
    'shellac',
    1,
    [
      [2.1, 'severe'],
      [1.05, 'moderate'],
      [0.7, 'slight'],
      [0.35, 'clean'],
    ],
  ],
  [
    'epoxy',
    1,
    [
      [1.08, 'moderate'],
      [0.54, 'slight'],
      [0.36, 'clean'],
      [0.18, 'clean'],
    ],
  ],
  [
    'epoxy',
    2,
    [
      [1.08, 'moderate'],
      [0.54, 'slight'],
      [0.36, 'clean'],
      [0.18, 'clean'],
    ],
  ],
  [
    'epoxy',
    24,
    [
      [0.12, 'clean'],
      [0.06, 'clean'],
      [0.04, 'clean'],
      [0.02, 'clean'],
    ],
  ],
];

test.each(CELLS)(
  '%s cured %d h gives the travel and class of common practice in four woods',
  (seal, hours, row) => {
    row.forEach(([medianMm, name], column) => {
      const travel = bleedTravel({ wood: REFERENCE_WOODS[column]!, seal, coats: 1, sealHours: hours });
      // bound: rounding of the table's products
      expect(travel.medianMm).toBeCloseTo(medianMm, 12);
      expect(travel.class).toBe(name);
      expect(travel.basis).toBe('prior');
      expect(travel.woodKnown).toBe(true);
    });
  },
);

test('poplar is worst, then cherry, maple, walnut, at every seal and hour', () => {
  for (const seal of ['none', 'sanding-sealer', 'shellac', 'epoxy'] as const) {
    for (const sealHours of [0, 0.5, 1, 3, 12, 24, 72]) {
      const medians = REFERENCE_WOODS.map(
        (wood) => bleedTravel({ wood, seal, coats: 1, sealHours }).medianMm,
      );
      expect(medians).toEqual([...medians].sort((a, b) => b - a));
      expect(new Set(medians).size).toBe(4);
    }
  }
});

// spread hypot(0.7, 0.5) = 0.860, visible above 0.45 mm; last digit as given
test.each([
  [6, 0.999],
  [3, 0.986],
  [2, 0.959],
  [1, 0.823],
  [0.36, 0.398],
  [0.12, 0.062],
])('a median of %d mm is visible with probability %d', (medianMm, probability) => {
  expect(visibleProbability(medianMm, Math.hypot(0.7, 0.5))).toBeCloseTo(probability, 3);
});

test('the 95 % band is a factor 5.4 either way before any coupon', () => {
  const travel = bleedTravel({ wood: 'maple', seal: 'epoxy', coats: 1, sealHours: 1 });
  expect(travel.highMm / travel.medianMm).toBeCloseTo(5.4, 1);
  expect(travel.medianMm / travel.lowMm).toBeCloseTo(travel.highMm / travel.medianMm, 12);
});

test('deep-pour resin runs about eight times as far as coating resin', () => {
  const base = { wood: 'cherry', seal: 'none', coats: 0, sealHours: 0 } as const;
  const ratio = bleedTravel({ ...base, resin: 'deep-pour' }).medianMm / bleedTravel(base).medianMm;
  expect(ratio).toBeCloseTo(98.507 / 12.717, 3);
});

test('ten degrees warmer runs 1.414 times as far: the start thins fourfold, the cure doubles', () => {
  const base = { wood: 'cherry', seal: 'none', coats: 0, sealHours: 0 } as const;
  const ratio = bleedTravel({ ...base, temperatureC: 35 }).medianMm / bleedTravel(base).medianMm;
  expect(ratio).toBeCloseTo(Math.SQRT2, 12);
});

test('a wood without a prior is taken by its likeness to others, with the spread of its class, and says so', () => {
  const bare = { seal: 'none', coats: 0, sealHours: 0 } as const;
  const ash = bleedTravel({ ...bare, wood: 'ash' });
  expect(ash.woodKnown).toBe(false);
  expect(ash.medianMm).toBe(6);
  expect(ash.spread).toBeCloseTo(Math.hypot(1, 0.5), 12);
  // both are ring-porous oaks, but the vessels of one are plugged
  expect(bleedTravel({ ...bare, wood: 'white-oak' }).medianMm).toBeLessThan(
    bleedTravel({ ...bare, wood: 'red-oak' }).medianMm / 5,
  );
  expect(bleedTravel({ ...bare, wood: 'teak' }).spread).toBeCloseTo(Math.hypot(0.7, 0.5), 12);
});

test('a wood that is like no other gets the mean of the known ones and a wider band, and says so', () => {
  const wood = { ...woods.ash, bleedAnalogy: null };
  const travel = bleedTravel({ wood, seal: 'none', coats: 0, sealHours: 0 });
  expect(travel.woodKnown).toBe(false);
  expect(travel.medianMm).toBeCloseTo((6 * 3 * 2 * 1) ** 0.25, 12);
  // sample standard deviation of ln 6, ln 3, ln 2, ln 1: √(1.687402/3)
  expect(travel.spread).toBeCloseTo(Math.hypot(0.7, 0.5, 0.749978), 6);
});

test('heart and sap move the travel only where the wood’s row has a factor for them', () => {
  const base = { seal: 'none', coats: 0, sealHours: 0 } as const;
  expect(bleedTravel({ ...base, wood: 'walnut', part: 'heart' }).medianMm).toBe(1);
  const wood = { ...woods.walnut, sapFactor: cited(4, 'entered', 'maker-entry') };
  const sap = bleedTravel({ ...base, wood, part: 'sap' });
  expect(sap.medianMm).toBeCloseTo(4, 12);
  expect(sap.sources).toContain('maker-entry');
  expect(bleedTravel({ ...base, wood, part: 'heart' }).medianMm).toBe(1);
  expect(bleedTravel({ ...base, wood }).medianMm).toBe(1);
});

test('class ends belong to the worse class', () => {
  expect([0.4499, 0.45, 1, 2].map(bleedClass)).toEqual(['clean', 'slight', 'moderate', 'severe']);
});

test('negative hours and half coats are refused', () => {
  const base = { wood: 'maple', seal: 'epoxy', coats: 1, sealHours: 1 } as const;
  expect(() => bleedTravel({ ...base, sealHours: -1 })).toThrow(RangeError);
  expect(() => bleedTravel({ ...base, coats: 1.5 })).toThrow(RangeError);
});
