import { medialAxis } from '@pourproof/geometry';
import { expect, test } from 'vitest';
import { cleanFrom } from '../../../../tests/support/shapes/clean-from.ts';
import { overlapBound } from './overlap-bound.ts';

/** Area that two discs share whose centres are some way apart, mm². */
function lens(radius: number, apart: number): number {
  const half = Math.min(1, apart / (2 * radius));
  return 2 * radius * radius * (Math.acos(half) - half * Math.sqrt(1 - half * half));
}

test('at a waist between two points it bounds what the discs on both sides share, by no more than a fiftieth too much', () => {
  const r = 1.5;
  const axis = medialAxis(cleanFrom([[-30, -30, 0, -r, 30, -30, 30, 30, 0, r, -30, 30]]));
  for (const disc of [0.5, 1, 1.4]) {
    // at clearance R the discs stop √(R² − r²) from the waist
    const most = Math.hypot(r, disc);
    const steps = 4000;
    let shared = 0;
    for (let k = 0; k < steps; k++) {
      const clearance = r + ((most - r) * (k + 0.5)) / steps;
      shared += (lens(disc, 2 * Math.sqrt(clearance ** 2 - r ** 2)) * (most - r)) / steps;
    }
    const bound = overlapBound(axis, disc, 4);
    expect(bound).toBeGreaterThan(shared);
    expect(bound).toBeLessThan(1.02 * shared);
    // nothing is shared before the disc fits, nor beyond where the cutter stops to follow
    expect(overlapBound(axis, disc, r)).toBe(0);
  }
});
