import { expect, test } from 'vitest';
import { defaultMaterials } from './materials-book.ts';
import type { ResinEntry } from './materials-overrides.ts';
import { mergeMaterials } from './merge-materials.ts';
import { mistakenRatio } from './mistaken-ratio.ts';

const resin = (entry: ResinEntry) => {
  const row = mergeMaterials(defaultMaterials, { resins: { mine: { like: 'coating', ...entry } } }).resins
    .mine;
  return row === undefined ? null : mistakenRatio(row);
};

test('two to one by volume typed as by weight gives a fifth too much hardener', () => {
  const mistaken = resin({ ratioByWeight: { a: 2, b: 1 } });
  expect(mistaken).toMatchObject({ entered: 'by-weight', typed: 2 });
  // 1.15 against 0.96 g/ml
  expect(mistaken?.hardenerOffPct).toBeCloseTo(19.79, 2);
});

test('100 to 42 by weight typed as by volume gives a sixth too little', () => {
  const mistaken = resin({ ratioByVolume: { a: 100, b: 42 } });
  expect(mistaken?.entered).toBe('by-volume');
  expect(mistaken?.hardenerOffPct).toBeCloseTo(100 * (2 / (100 / 42) - 1), 9);
});

test('is silent on ratios that are right, on another resin altogether, and where the label gives both or densities that make it right', () => {
  expect(mistakenRatio(defaultMaterials.resins.coating!)).toBeNull();
  for (const entry of [
    { ratioByWeight: { a: 100, b: 42 } },
    { ratioByVolume: { a: 2, b: 1 } },
    { ratioByWeight: { a: 100, b: 30 } },
    { ratioByWeight: { a: 2, b: 1 }, ratioByVolume: { a: 2, b: 1 } },
    { ratioByWeight: { a: 2, b: 1 }, densityAGPerMl: 1.1, densityBGPerMl: 1.1 },
  ]) {
    expect(resin(entry), JSON.stringify(entry)).toBeNull();
  }
});
