import { ML_PER_US_FL_OZ } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mixByMass } from './mix-by-mass.ts';
import { type Resin, resins } from './resin.ts';

// 2000 mm² × 3.2 mm, 0.5 mm proud, 15 % waste: worked by hand, each to its last digit
const FILL = { volumeMl: 6.4, overpourMl: 1, wastePct: 15 };

test('the worked fill: 8.510 ml or 0.28776 fl oz, 6.524 g of A and 2.723 g of B', () => {
  const mix = mixByMass(FILL, 'coating');
  expect(mix.volumeMl).toBeCloseTo(8.51, 9);
  expect(mix.volumeMl / ML_PER_US_FL_OZ).toBeCloseTo(0.28776, 5);
  expect(mix.partAMl).toBeCloseTo(5.673, 3);
  expect(mix.partBMl).toBeCloseTo(2.837, 3);
  expect(mix.partAG).toBeCloseTo(6.524, 3);
  expect(mix.partBG).toBeCloseTo(2.723, 3);
  expect(mix.massG / mix.volumeMl).toBeCloseTo(1.08667, 5);
  expect(mix.assumed).toEqual(['densityA', 'densityB']);
});

test('a ratio by weight uses the density of the mix: 8.510 ml at 1.10 g/ml are 9.361 g', () => {
  const resin: Resin = {
    ...resins.coating,
    ratioByWeight: { value: { a: 100, b: 45 }, status: 'entered', because: ['maker-entry'] },
    densityMixedGPerMl: { value: 1.1, low: 1.1, high: 1.1, status: 'entered', because: ['maker-entry'] },
  };
  const mix = mixByMass(FILL, resin);
  expect(mix.massG).toBeCloseTo(9.361, 9);
  expect(mix.partAG / mix.partBG).toBeCloseTo(100 / 45, 12);
  expect(mix.sources).toEqual(['maker-entry']);
  expect(mix.assumed).toEqual([]);
});

test('a density that no label gives is assumed and named', () => {
  const mix = mixByMass(FILL, {
    ...resins.coating,
    densityAGPerMl: { value: 1.15, status: 'entered', because: ['maker-entry'] },
    densityBGPerMl: null,
  });
  expect(mix.assumed).toEqual(['densityB']);
  expect(mix.partBG).toBeCloseTo(2.723, 3);
});

test('a ratio by weight with both densities entered fills the volume, and an entered density of the mix goes first', () => {
  const entered = (value: number) => ({ value, status: 'entered', because: ['maker-entry'] }) as const;
  const resin: Resin = {
    ...resins.coating,
    ratioByWeight: { value: { a: 100, b: 43 }, status: 'entered', because: ['maker-entry'] },
    densityAGPerMl: entered(1.16),
    densityBGPerMl: entered(0.95),
  };
  const mix = mixByMass(FILL, resin);
  expect((mix.partAMl ?? 0) + (mix.partBMl ?? 0)).toBeCloseTo(mix.volumeMl, 9);
  const labelled = { value: 1.1, low: 1.1, high: 1.1, status: 'entered', because: ['maker-entry'] } as const;
  expect(mixByMass(FILL, { ...resin, densityMixedGPerMl: labelled }).massG).toBeCloseTo(9.361, 9);
  expect(mix.assumed).toEqual([]);
});

test('parts sum to the whole, and mass scales with volume', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 5000, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      (ml, waste) => {
        const one = mixByMass({ volumeMl: ml, wastePct: waste }, 'deep-pour');
        const two = mixByMass({ volumeMl: 2 * ml, wastePct: waste }, 'deep-pour');
        expect(one.partAG + one.partBG).toBe(one.massG);
        expect(two.massG).toBeCloseTo(2 * one.massG, 6);
      },
    ),
  );
});

test('negative volume and a resin without ratio are refused', () => {
  expect(() => mixByMass({ volumeMl: -1, wastePct: 0 }, 'coating')).toThrow(RangeError);
  expect(() => mixByMass({ volumeMl: 1, wastePct: Number.NaN }, 'coating')).toThrow(RangeError);
  expect(() => mixByMass(FILL, { ...resins.coating, ratioByVolume: null })).toThrow(/mixing ratio/);
});

test('assumed densities may make the same volume lighter or heavier, entered ones may not', () => {
  const { massMayBe, partAG, partBG, massG } = mixByMass(FILL, 'coating');
  // 1.06 to 1.18 for 1.15, 0.93 to 1.05 for 0.96 g/ml
  expect(massMayBe.less).toBeCloseTo(
    Math.hypot((partAG / massG) * (0.09 / 1.15), (partBG / massG) * (0.03 / 0.96)),
    12,
  );
  expect(massMayBe.more).toBeCloseTo(
    Math.hypot((partAG / massG) * (0.03 / 1.15), (partBG / massG) * (0.09 / 0.96)),
    12,
  );
  const entered = (value: number) => ({ value, status: 'entered', because: ['maker-entry'] }) as const;
  const labelled = { ...resins.coating, densityAGPerMl: entered(1.14), densityBGPerMl: entered(0.97) };
  expect(mixByMass(FILL, labelled).massMayBe).toEqual({ less: 0, more: 0 });
});
