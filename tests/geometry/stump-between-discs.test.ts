import { reachedOutline } from '@pourproof/cutting';
import { arcRingsArea, leftStanding, medialAxis, openedArea } from '@pourproof/geometry';
import { type CleanRegion, packRings, rotation, signedArea, transformRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { regular, reversed } from '../support/shapes/clean-from.ts';

/** Bars that point at the middle of a plate from some sides, with room for a smaller disc than the bit among their ends. */
function plateWithBars(count: number, facesMm: number, halfWidthMm: number): CleanRegion {
  const bar = [facesMm, -halfWidthMm, 8, -halfWidthMm, 8, halfWidthMm, facesMm, halfWidthMm];
  const bars = Array.from({ length: count }, (_, k) => {
    const [c, s] = [Math.cos((2 * Math.PI * k) / count), Math.sin((2 * Math.PI * k) / count)];
    return reversed(bar.map((v, i) => (i % 2 === 0 ? c * v - s * bar[i + 1] : s * bar[i - 1] + c * v)));
  });
  return packRings([regular(6, 30), ...bars]) as CleanRegion;
}

test('three discs that overlap where short waists meet leave a stump away from all walls', () => {
  const [faces, half, r] = [1, 0.05, 1.01];
  const axis = medialAxis(plateWithBars(3, faces, half));
  // each disc stops at the corners of two bars, on the ray between them
  const waist = faces * Math.sin(Math.PI / 3) - half * Math.cos(Math.PI / 3);
  const d = faces * Math.cos(Math.PI / 3) + half * Math.sin(Math.PI / 3) + Math.sqrt(r * r - waist * waist);
  // they meet that far from the middle: a triangle less three segments of discs
  const q = d / 2 - Math.sqrt(r * r - 0.75 * d * d);
  const halfChord = (q * Math.sqrt(3)) / 2;
  const segment = r * r * Math.asin(halfChord / r) - halfChord * Math.sqrt(r * r - halfChord * halfChord);
  const stump = (3 * Math.sqrt(3) * q * q) / 4 - 3 * segment;

  const { pieces, facetAreaMm2 } = leftStanding(axis, r, 1e-4);
  const between = pieces.filter(({ mouths }) => mouths === 3);
  expect(between).toHaveLength(1);
  const [{ kind, areaMm2, atMm, shortMm, widestMm }] = between;
  expect(kind).toBe('cusp');
  expect(areaMm2).toBeCloseTo(stump, 12);
  expect(Math.hypot(...atMm)).toBeLessThan(1e-12);
  expect(shortMm).toBeCloseTo(d - r, 12);
  expect(widestMm).toBeCloseTo(d - r, 12);

  // so coarse that each of its sides is one chord, and each of them comes to lie to the right of its middle
  for (let k = 0; k < 12; k++) {
    const turned = transformRings(rotation(0.1 + (k * Math.PI) / 6), axis.region) as CleanRegion;
    const [stumpThere] = leftStanding(medialAxis(turned), r, 1e-4).pieces.filter(
      ({ mouths }) => mouths === 3,
    );
    expect(stumpThere.widestMm).toBeCloseTo(d - r, 9);
    expect(Math.hypot(...stumpThere.atMm)).toBeLessThan(1e-9);
  }

  const whole = signedArea(axis.region);
  const cut = openedArea(axis, r);
  expect(arcRingsArea(reachedOutline(axis, r, r)) / cut).toBeCloseTo(1, 12);
  const standing = pieces.reduce((sum, piece) => sum + piece.areaMm2, facetAreaMm2);
  expect((cut + standing) / whole).toBeCloseTo(1, 12);
});

test('what is cut and what stands is the plate, also where many discs overlap on one side of a waist', () => {
  for (const [count, r] of [
    // so near that each covers the middle, where all three overlap
    [3, 0.87],
    [3, 0.9],
    [4, 0.85],
    [5, 0.75],
    [7, 0.6],
    [7, 0.9],
  ] as const) {
    const axis = medialAxis(plateWithBars(count, 1, 0.05));
    const whole = signedArea(axis.region);
    const cut = openedArea(axis, r);
    expect(arcRingsArea(reachedOutline(axis, r, r)) / cut).toBeCloseTo(1, 12);
    const { pieces, facetAreaMm2 } = leftStanding(axis, r, 1e-4);
    const standing = pieces.reduce((sum, piece) => sum + piece.areaMm2, facetAreaMm2);
    expect((cut + standing) / whole).toBeCloseTo(1, 12);
  }
});
