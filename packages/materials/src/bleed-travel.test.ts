import { describe, expect, test } from 'vitest';
import { type BleedJob, bleedClass, bleedTravel, visibleProbability } from './bleed-travel.ts';
import { cited } from './cited.ts';
import { openVesselMm } from './flow-laws.ts';
import { type Resin, resins } from './resin.ts';
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

describe('two laws of travel, weighed half and half', () => {
  const bare = { seal: 'none', coats: 0, sealHours: 0 } as const;
  const against = (wood: WoodId, job: Partial<BleedJob>): number =>
    bleedTravel({ ...bare, wood, ...job }).medianMm / bleedTravel({ ...bare, wood }).medianMm;
  // bounds of deep-pour resin, and of coating resin that gels after 100 min as a thin layer
  const byViscosity = 98.507 / (12.717 * Math.sqrt(2.5));

  test('deep-pour resin runs five times as far by viscosity, as far by trapped air: in between where vessels close', () => {
    expect(against('cherry', { resin: 'deep-pour' })).toBeCloseTo(Math.sqrt(byViscosity), 3);
    expect(against('red-oak', { resin: 'deep-pour' })).toBeCloseTo(byViscosity, 3);
  });

  test('ten degrees warmer runs 1.414 times as far by viscosity: the start thins fourfold, the cure doubles', () => {
    expect(against('ash', { temperatureC: 35 })).toBeCloseTo(Math.SQRT2, 12);
    expect(against('cherry', { temperatureC: 35 })).toBeCloseTo(Math.SQRT2 ** 0.5, 12);
  });

  test('the band covers both laws and the doubt of gel times, and nothing is added for the reference', () => {
    const { medianMm, highMm, lowMm } = bleedTravel({ ...bare, wood: 'cherry', resin: 'deep-pour' });
    const reference = bleedTravel({ ...bare, wood: 'cherry' });
    expect(reference.spread).toBeCloseTo(Math.hypot(0.7, 0.5), 12);
    expect(lowMm).toBeLessThan(reference.medianMm);
    expect(highMm).toBeGreaterThan(reference.medianMm * byViscosity);
    expect(highMm / medianMm).toBeGreaterThan(reference.highMm / reference.medianMm);
  });

  test('the bounds: trapped air lets 90 mm of vessel fill by 2.856 % at 25 µm, and says that it governs', () => {
    const { flow } = bleedTravel({ ...bare, wood: 'basswood' });
    expect(openVesselMm.value).toBeCloseTo(89.628, 3);
    expect(flow.trappedAirMm).toBeCloseTo(0.02856 * 89.628, 3);
    expect(flow.governs).toBe('trapped-air');
    expect(flow.viscosityMm.low).toBeCloseTo(flow.viscosityMm.value * Math.sqrt(3 / 4), 9);
    expect(flow.viscosityMm.high).toBeCloseTo(flow.viscosityMm.value * Math.sqrt(9 / 4), 9);
    expect(bleedTravel({ ...bare, wood: 'red-oak' }).flow).toMatchObject({
      trappedAirMm: null,
      governs: 'viscosity',
    });
  });

  test('a copy of the materials, as a worker is sent one, says the same as the materials', () => {
    for (const wood of Object.values(woods)) {
      for (const resin of Object.values(resins)) {
        const { longerThan: _, ...travel } = bleedTravel({ ...bare, wood, resin });
        const copied = structuredClone({ ...bare, wood, resin });
        expect(bleedTravel(copied)).toMatchObject(travel);
      }
    }
  });

  test('a runnier resin never runs less far, whatever the wood', () => {
    for (const wood of Object.keys(woods) as WoodId[]) {
      for (const [thick, thin] of [
        [2, 1],
        [1, 0.3],
      ] as const) {
        const of = (value: number): Resin => ({
          ...resins.coating,
          viscosityPaS: { value, low: value, high: value, status: 'entered', because: ['maker-entry'] },
        });
        expect(against(wood, { resin: of(thin) })).toBeGreaterThan(against(wood, { resin: of(thick) }));
      }
    }
  });
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
