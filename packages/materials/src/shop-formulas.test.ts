import { G_PER_LB, MM_PER_INCH } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { endGrainUptakeMl } from './end-grain-uptake.ts';
import { pourLayers } from './pour-layers.ts';
import { resins } from './resin.ts';
import { sealerMassG, sealFilm } from './seal-film.ts';
import { sealers } from './sealer.ts';
import { shopHours } from './shop-hours.ts';
import { smallestBatchG } from './smallest-batch.ts';

test('layers are equal, as few as the limit allows, and a whole multiple earns no extra one', () => {
  expect(pourLayers(12, 6)).toEqual({ count: 2, eachMm: 6 });
  expect(pourLayers(12.1, 6).count).toBe(3);
  // 3 × 0.1 is a little more than 0.3 in binary
  expect(pourLayers(3 * 0.1, 0.1).count).toBe(3);
  expect(pourLayers(0, 6).count).toBe(0);
  expect(() => pourLayers(-1, 6)).toThrow(RangeError);
});

test('the smallest batch splits within the tolerance however the display rounds, and a smaller one may not', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 10, noNaN: true }),
      fc.constantFrom(0.01, 0.1, 1),
      fc.double({ min: 0.5, max: 10, noNaN: true }),
      fc.boolean(),
      (a, resolutionG, tolerancePct, zeroedBetween) => {
        const ratio = { a, b: 1 };
        const batch = smallestBatchG({ resolutionG, ratio, tolerancePct, zeroedBetween });
        const worst = (mass: number) => worstRatioError(mass, a, resolutionG, zeroedBetween);
        expect(worst(batch)).toBeCloseTo(tolerancePct / 100, 9);
        expect(worst(batch * 1.5)).toBeLessThan(tolerancePct / 100);
        expect(worst(batch * 0.95)).toBeGreaterThan(tolerancePct / 100);
      },
    ),
  );
});

/**
 * Tries every corner of the reading errors: A read to half a step, then B alone or the running total to half
 * a step.
 */
function worstRatioError(massG: number, ratio: number, stepG: number, zeroed: boolean): number {
  const [partA, partB] = [(massG * ratio) / (ratio + 1), massG / (ratio + 1)];
  let worst = 0;
  for (const errorA of [-stepG / 2, stepG / 2]) {
    for (const errorRead of [-stepG / 2, stepG / 2]) {
      const poured = partA + errorA;
      const second = zeroed ? partB + errorRead : partB + errorRead - errorA;
      worst = Math.max(worst, Math.abs(poured / second / ratio - 1));
    }
  }
  return worst;
}

test('a 2 lb shellac cut is 17.5 % solids by volume and weighs 0.849 g/ml', () => {
  // 2 lb of shellac of 1.13 g/ml in one US gallon (231 in³) of ethanol of 0.789 g/ml
  const solidsMl = (2 * G_PER_LB) / 1.13;
  const gallonMl = (231 * MM_PER_INCH ** 3) / 1000;
  const share = solidsMl / (solidsMl + gallonMl);
  expect(sealers.shellac.solids.value).toBeCloseTo(share, 3);
  const density = (2 * G_PER_LB + 0.789 * gallonMl) / (solidsMl + gallonMl);
  expect(sealers.shellac.densityGPerMl.value).toBeCloseTo(density, 3);
  // cuts of 1 and 3 lb bracket it: 9.6 and 24.1 %
  expect((100 * solidsMl) / 2 / (solidsMl / 2 + gallonMl)).toBeCloseTo(9.6, 1);
  expect((100 * solidsMl * 1.5) / (solidsMl * 1.5 + gallonMl)).toBeCloseTo(24.1, 1);
});

test('film and mass of seal follow coats and area; bare wood has none', () => {
  expect(sealFilm(sealers.epoxy, 1).filmMm).toBeCloseTo(0.1, 12);
  expect(sealFilm(sealers.shellac, 2).filmMm).toBeCloseTo(2 * 0.0175, 12);
  expect(sealFilm(sealers.none, 3).filmMm).toBe(0);
  // 0.01 m² at 0.1 mm are 1 ml
  expect(sealerMassG(sealers.epoxy, 1, 10_000)).toBeCloseTo(1.1, 12);
  expect(() => sealFilm(sealers.epoxy, -1)).toThrow(RangeError);
});

test('mixed densities of the resin classes follow from parts and ratio', () => {
  for (const resin of Object.values(resins)) {
    const { a, b } = resin.ratioByVolume!.value;
    const mixed = (a * resin.densityAGPerMl!.value + b * resin.densityBGPerMl!.value) / (a + b);
    expect(resin.densityMixedGPerMl.value).toBeCloseTo(mixed, 3);
  }
});

test('end grain of 1 cm² with 6 mm of travel takes at most 0.222 ml', () => {
  expect(endGrainUptakeMl(100, 6)).toBeCloseTo(0.222, 12);
});

test('what reacts waits twice as long ten degrees colder, what dries does not', () => {
  const job = { seal: sealers.shellac, coats: 2, resin: resins.coating };
  const warm = shopHours({ ...job, temperatureC: 25 });
  const cold = shopHours({ ...job, temperatureC: 15 });
  warm.forEach((wait, index) => {
    const factor = wait.wait === 'seal-cure' || wait.wait === 'between-seal-coats' ? 1 : 2;
    expect(cold[index]!.earliestHours).toBeCloseTo(factor * wait.earliestHours, 9);
    expect(cold[index]!.latestHours).toBeCloseTo(factor * wait.latestHours, 9);
  });
});

test('an epoxy seal shows both of its conflicting windows; bare wood shows no seal at all', () => {
  const epoxy = shopHours({ seal: sealers.epoxy, coats: 1, resin: resins.coating, temperatureC: 25 });
  expect(epoxy.map((wait) => wait.wait)).toEqual([
    'seal-cure',
    'seal-bonds-unsanded',
    'working-time',
    'next-layer',
    'top-up',
    'hard',
    'full-cure',
  ]);
  expect(epoxy[1]!.latestHours).toBeLessThan(epoxy[0]!.earliestHours);
  const bare = shopHours({ seal: sealers.none, coats: 0, resin: resins.coating, temperatureC: 25 });
  expect(bare[0]!.wait).toBe('working-time');
});
