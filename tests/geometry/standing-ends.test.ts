import { leftStanding, medialAxis } from '@pourproof/geometry';
import { type CleanRegion, transformRings, translation } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { cleanFrom } from '../support/shapes/clean-from.ts';

/** A plate 40 × 40 with a needle 80 mm long on its left side, whose flanks rise from the tip at one in twenty; `nick` points on its upper flank. */
function needle(...nick: readonly (readonly [number, number])[]): CleanRegion {
  const above = [...nick].reverse().flat();
  const below = nick.flatMap(([x, y]) => [x, -y]);
  return cleanFrom([[0, 0, ...below, 80, -4, 80, -20, 120, -20, 120, 20, 80, 20, 80, 4, ...above]]);
}

describe('the branch of a tip', () => {
  const branchOf = (region: CleanRegion): { reachMm: number; widthMm: number } | null | undefined =>
    leftStanding(medialAxis(region), 1, 0.001).pieces.find(({ kind }) => kind === 'tip')?.branch;

  test('goes on beyond where the bit stops, as far as it widens', () => {
    // the bit stops 20 mm from the tip; the needle widens up to the plate
    const branch = branchOf(needle());
    expect(branch?.reachMm).toBeGreaterThan(70);
    expect(branch?.widthMm).toBeGreaterThan(7);
  });

  test('begins at the tip, also where a nick makes a waist on the way', () => {
    const whole = branchOf(needle());
    const nicked = branchOf(needle([9.5, 0.475], [10, 0.45], [10.5, 0.525]));
    expect(nicked?.reachMm).toBeCloseTo(whole?.reachMm ?? 0, 2);
    expect(nicked?.widthMm).toBeCloseTo(whole?.widthMm ?? 0, 9);
  });
});

test('a cusp stands off the nearest of its walls, wherever the artwork lies', () => {
  // a waist 3 mm wide between two noses of 0.6 mm with a notch in each; the bit stops at the corners of the noses
  const [half, r] = [1.5, 1.6];
  const nose = (sign: number): number[] =>
    [-0.3, half, -0.1, 1.7, 0.3, half].flatMap((v, i) => (i % 2 === 0 ? [v] : [sign * v]));
  const upper = nose(1);
  const lower = nose(-1);
  const ring = [-30, -30, ...[0, 2, 4].flatMap((i) => lower.slice(i, i + 2)), 30, -30, 30, 30];
  ring.push(...[4, 2, 0].flatMap((i) => upper.slice(i, i + 2)), -30, 30);
  const along = 0.3 + Math.sqrt(r * r - half * half);
  const meet = Math.sqrt(r * r - along * along);
  // the flatter wall of the notch is y = 1.65 − x/2
  const off = (1.65 - meet) / Math.hypot(1, 0.5);
  for (const place of [translation(0, 0), translation(700, 300), translation(-90, -4000)]) {
    const region = transformRings(place, cleanFrom([ring])) as CleanRegion;
    const cusps = leftStanding(medialAxis(region), r, 1e-4).pieces.filter(({ kind }) => kind === 'cusp');
    expect(cusps.length).toBe(2);
    for (const { widestMm, shortMm, branch } of cusps) {
      expect(widestMm).toBeCloseTo(off, 9);
      expect(shortMm).toBeGreaterThanOrEqual(widestMm);
      expect(branch?.widthMm).toBeCloseTo(2 * half, 9);
    }
  }
});
