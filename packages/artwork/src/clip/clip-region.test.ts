import { packRings, type Region, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { intersectRegions, subtractRegions, uniteRegions } from './clip-region.ts';

function square(x: number, y: number, size: number, fillRule: Region['fillRule'] = 'nonzero'): Region {
  return { ...packRings([[x, y, x + size, y, x + size, y + size, x, y + size]]), fillRule };
}

describe.each([0, 1e5])('squares moved by %s mm', (far) => {
  test('overlap, differ and unite by closed forms', () => {
    const [a, b] = [square(far, far, 10), square(far + 6, far + 6, 10)];
    expect(signedArea(intersectRegions(a, b))).toBeCloseTo(16, 6);
    expect(signedArea(subtractRegions(a, [b]))).toBeCloseTo(84, 6);
    expect(signedArea(uniteRegions([a, b]))).toBeCloseTo(184, 6);
  });
});

test('each region counts by its own fill rule', () => {
  const ring = {
    ...packRings([
      [0, 0, 10, 0, 10, 10, 0, 10],
      [2, 2, 8, 2, 8, 8, 2, 8],
    ]),
    fillRule: 'evenodd' as const,
  };
  expect(signedArea(intersectRegions(ring, square(0, 0, 9)))).toBeCloseTo(45, 6);
  expect(signedArea(intersectRegions({ ...ring, fillRule: 'nonzero' }, square(1, 1, 8)))).toBeCloseTo(64, 6);
});

test('what a rectangle plainly holds is given back as it is; what lies apart is nothing', () => {
  const small = square(2, 2, 3);
  expect(intersectRegions(small, square(0, 0, 10))).toBe(small);
  expect(intersectRegions(small, square(20, 20, 10)).ringEnds).toHaveLength(0);
  expect(subtractRegions(small, [square(20, 20, 10)])).toBe(small);
});
