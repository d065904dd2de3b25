import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distinctRings, nearTwins } from './distinct-rings.ts';

function polygon(n: number, r: number, x = 0, y = 0): number[] {
  return Array.from({ length: n }, (_, k) => [
    x + r * Math.cos((6.283185307179586 * k) / n),
    y + r * Math.sin((6.283185307179586 * k) / n),
  ]).flat();
}

describe('rings that run the same way', () => {
  test('are one whatever their start, direction and division into points', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 30 }),
        fc.nat(),
        fc.boolean(),
        fc.infiniteStream(fc.integer({ min: 0, max: 3 })),
        (n, from, back, cuts) => {
          const ring = polygon(n, 10, 123, -45);
          const points = Array.from({ length: n }, (_, k) => {
            const i = ((k + from) % n) * 2;
            const j = ((k + from + 1) % n) * 2;
            const parts = 1 + (cuts.next().value as number);
            return Array.from({ length: parts }, (_, p): [number, number] => [
              ring[i] + ((ring[j] - ring[i]) * p) / parts,
              ring[i + 1] + ((ring[j + 1] - ring[i + 1]) * p) / parts,
            ]);
          }).flat();
          const other = (back ? points.reverse() : points).flat();
          const { rings, doubled } = distinctRings([ring, other], 0.05);
          expect(rings).toEqual([ring]);
          expect(doubled).toHaveLength(1);
        },
      ),
    );
  });

  test('are two when they differ by more than the tolerance anywhere', () => {
    const ring = polygon(40, 10);
    const dented = [...ring];
    dented[10] *= 0.98;
    const moved = polygon(40, 10, 0.06);
    const angle = [0, 0, 10, 0, 10, 4, 4, 4, 4, 10, 0, 10];
    // the same box and the same area, but not the same way
    const mirrored = angle.map((c, i) => (i % 2 === 0 ? 10 - c : c));
    for (const other of [dented, moved]) {
      expect(distinctRings([ring, other], 0.05).rings).toHaveLength(2);
    }
    expect(distinctRings([angle, mirrored], 0.05).rings).toHaveLength(2);
  });

  test('are found at any place, also across the edges of the cells that they are sought in', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        (x, y, off) => {
          expect(
            distinctRings([polygon(7, 5, x, y), polygon(7, 5, x + off, y - off)], 0.05).rings,
          ).toHaveLength(1);
        },
      ),
    );
  });
});

test('near twins are large outlines within 0.3 mm all along; small ones and frames are none', () => {
  expect(nearTwins([polygon(30, 10), polygon(30, 10.2)])).toHaveLength(1);
  expect(nearTwins([polygon(30, 10), polygon(30, 10.5)])).toEqual([]);
  expect(nearTwins([polygon(30, 0.5), polygon(30, 0.4)])).toEqual([]);
});
