import { expect, test } from 'vitest';
import type { CouponReading } from './coupon.ts';
import { isBleeding, scaledReading } from './scaled-reading.ts';

test('a length that was read in steps lies within half a step of what was read', () => {
  const read = (lengthMm: number): CouponReading => ({ kind: 'streak', lengthMm, stepMm: 1 });
  expect(isBleeding(read(1), 0.5)).toBe(true);
  expect(isBleeding(read(1), 0.51)).toBeNull();
  expect(isBleeding(read(1), 1.49)).toBeNull();
  expect(isBleeding(read(1), 1.5)).toBe(false);
  expect(isBleeding({ kind: 'streak', lengthMm: 1 }, 0.99)).toBe(true);
  expect(isBleeding({ kind: 'streak', lengthMm: 1 }, 1.01)).toBe(false);
});

test('whether a slot bleeds stays when reading and visible length grow alike', () => {
  const readings: readonly CouponReading[] = [
    { kind: 'streak', lengthMm: 1 },
    { kind: 'streak', lengthMm: 1, stepMm: 0.5 },
    { kind: 'none-visible', belowMm: 0.7 },
    { kind: 'between', fromMm: 0.4, toMm: 0.9 },
    { kind: 'class', class: 'clean' },
    { kind: 'class', class: 'slight' },
    { kind: 'class', class: 'moderate' },
    { kind: 'class', class: 'severe' },
  ];
  for (const reading of readings) {
    for (const visibleMm of [0.2, 0.45, 0.6, 0.8, 1, 1.3, 2, 5]) {
      expect(isBleeding(scaledReading(reading, 3), 3 * visibleMm)).toBe(isBleeding(reading, visibleMm));
    }
  }
});
