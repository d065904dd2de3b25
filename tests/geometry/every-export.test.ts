import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis } from '@pourproof/geometry';
import { type CleanRegion, packRings, scaling, transformRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between, gridCells, letters, magnitude, polygonFamilies, share, stars } from '../arbitraries.ts';
import { EXPORTS, NO_REGION, WALKS, type Walked } from '../support/every-export.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';
import { lettered } from '../support/shapes/lettered.ts';

test('every export that takes a region is walked, and what takes none is listed', () => {
  for (const [name, exports] of Object.entries(EXPORTS)) {
    const known = [...Object.keys(WALKS[name]!), ...NO_REGION[name]!].toSorted();
    expect(known, `exports of ${name}`).toEqual(Object.keys(exports).toSorted());
  }
});

const dots = fc
  .tuple(fc.integer({ min: 3, max: 24 }), magnitude(-2, 1), fc.integer({ min: 1, max: 4 }))
  .map(([corners, r, count]) =>
    cleanFrom(Array.from({ length: count }, (_, k) => regular(corners, r, 2.2 * r * k))),
  );
const rings = fc
  .tuple(fc.integer({ min: 3, max: 40 }), between(0.3, 0.98))
  .map(([corners, hole]) =>
    cleanFrom([regular(corners, 8)], [regular(corners + 2, 8 * hole * Math.cos(Math.PI / corners))]),
  );
/** Shapes that share points and edges, or miss one another by less than the grid. */
const touching = fc
  .tuple(
    fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 4, maxLength: 12 }),
    fc.constantFrom(0, 1e-9, 1e-7, 1e-4),
  )
  .map(([at, off]) => {
    const boxes = at.map((x, k) =>
      rectangle(x + off * k, (at[(k + 1) % at.length] ?? 0) + off * k * k, 1, 1 + (k % 3)),
    );
    return resolveRegions([{ ...packRings(boxes), fillRule: 'nonzero' }]).region;
  });
/** Artwork from a tenth of a millimetre up to a large table. */
const sized = (shape: fc.Arbitrary<CleanRegion>): fc.Arbitrary<CleanRegion> =>
  fc.tuple(shape, magnitude(-2, 2)).map(([region, factor]) => transformRings(scaling(factor), region));

const FAMILIES: Readonly<Record<string, fc.Arbitrary<CleanRegion>>> = {
  ...polygonFamilies,
  stars: stars([5, 12], [2, 10]),
  dots,
  rings,
  touching,
  cells: gridCells([2, 4], [0.4, 0.8]),
  'tiny and large': sized(fc.oneof(...Object.values(polygonFamilies))),
  nothing: fc.constant(resolveRegions([]).region),
};

/** A region with sizes that suit it; radii that tie with a clearance of it are as likely as any. */
function walkedOf(region: CleanRegion, [a, b, c]: readonly [number, number, number]): Walked {
  const axis = medialAxis(region);
  const clearances = [...axis.nodeR].filter((r) => r > 0).toSorted((p, q) => p - q);
  const widest = clearances.at(-1) ?? 1;
  const tied = clearances[Math.floor(a * clearances.length)] ?? 1;
  const radiusMm = b < 0.5 ? tied : widest * 10 ** (0.3 - 2.3 * a);
  return {
    region,
    axis,
    radiusMm,
    pathRadiusMm: Math.max(radiusMm, widest / 20),
    depthMm: widest * (0.1 + 3 * c),
    toleranceMm: Math.min(0.05, widest * 10 ** (-1 - 3 * b)),
    turnRad: 2 * Math.PI * c,
  };
}

function expectSound(walked: Walked, what: string): void {
  for (const [name, walks] of Object.entries(WALKS)) {
    for (const [key, walk] of Object.entries(walks)) {
      try {
        expect(hasNaN(walk(walked)), `NaN of ${key}`).toBe(false);
      } catch (error) {
        throw new Error(`${name}.${key} on ${what}, radius ${walked.radiusMm}, depth ${walked.depthMm}`, {
          cause: error,
        });
      }
    }
  }
}

/** Whether any number in a result is none; regions and axes are what they were made of. */
function hasNaN(value: unknown, depth = 0): boolean {
  if (typeof value === 'number') {
    return Number.isNaN(value);
  }
  if (ArrayBuffer.isView(value) || Array.isArray(value)) {
    return (value as readonly unknown[]).some((each) => hasNaN(each, depth + 1));
  }
  return (
    typeof value === 'object' &&
    value !== null &&
    depth < 3 &&
    Object.entries(value).some(
      ([key, each]) => key !== 'axis' && key !== 'stepCuts' && hasNaN(each, depth + 1),
    )
  );
}

const sizes = fc.tuple(share, share, share);

test.each(Object.entries(FAMILIES))('no export fails on a clean region: %s', (name, regions) => {
  fc.assert(
    fc.property(regions, sizes, (region, some) => {
      expectSound(walkedOf(region, some), name);
    }),
    cases(2),
  );
});

test('nor on letters', async () => {
  await fc.assert(
    fc.asyncProperty(letters, sizes, async ({ text, face, capHeightMm }, some) => {
      expectSound(walkedOf(await lettered(text, face, capHeightMm, 0.05), some), `${text} of ${face}`);
    }),
    cases(2),
  );
});
