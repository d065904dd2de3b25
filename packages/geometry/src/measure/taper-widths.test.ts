import { resolveRegions } from '@pourproof/arrangement';
import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { strokeWidths, type TaperWidths } from '../index.ts';
import { medialAxis } from '../medial-axis/medial-axis.ts';

const tapersOf = (ring: readonly number[]): TaperWidths | null =>
  strokeWidths(medialAxis(resolveRegions([{ ...packRings([ring]), fillRule: 'nonzero' }]).region)).tapers;

test('a wedge is taper from its tip to where its corners meet', () => {
  const tapers = tapersOf([0, 0, 56, -1.5, 56, 1.5]);
  const flank = Math.hypot(56, 1.5);
  // the largest disc touches the flanks and the end
  const radius = (56 * 1.5) / (flank + 1.5);
  expect(tapers?.narrowestMm).toBe(0);
  expect(tapers?.narrowestAt).toEqual([0, 0]);
  expect(tapers?.widestMm).toBeCloseTo(2 * radius, 9);
  expect(tapers?.lengthMm).toBeCloseTo(56 - radius, 9);
  expect(tapers?.lengthNarrowerThan(2)).toBeCloseTo(flank / 1.5, 9);
  expect(tapers?.lengthNarrowerThan(9)).toBeCloseTo(56 - radius, 9);
});

test('a spiral that grows from 0.05 to 3 mm all along tells its narrow end', () => {
  const sides: [number[], number[][]] = [[], []];
  for (let i = 0; i <= 400; i++) {
    const turn = (6 * Math.PI * i) / 400;
    const half = (0.05 + (2.95 * i) / 400) / 2;
    const at = (r: number): number[] => [r * Math.cos(turn), r * Math.sin(turn)];
    sides[0].push(...at(6 + 1.2 * turn - half));
    sides[1].unshift(at(6 + 1.2 * turn + half));
  }
  const ring = [...sides[0], ...sides[1].flat()];
  const axis = medialAxis(resolveRegions([{ ...packRings([ring]), fillRule: 'nonzero' }]).region);
  const { narrowestMm, lengthMm, tapers } = strokeWidths(axis);
  // widths are read across the spiral, which runs outwards by up to 11° and is drawn in chords
  expect(tapers?.narrowestMm).toBeGreaterThan(0.048);
  expect(tapers?.narrowestMm).toBeLessThan(0.051);
  expect(tapers?.widestMm).toBe(narrowestMm);
  expect(tapers?.lengthMm).toBeCloseTo(lengthMm, 9);
});

test('a bar has no taper, a pointed one has one at its end', () => {
  expect(tapersOf([0, 0, 40, 0, 40, 3, 0, 3])).toBeNull();
  const pointed = tapersOf([0, 0, 40, 0, 50, 1.5, 40, 3, 0, 3]);
  expect(pointed?.narrowestMm).toBe(0);
  expect(pointed?.widestMm).toBeCloseTo(3, 3);
  expect(pointed?.lengthMm).toBeGreaterThan(9);
  expect(pointed?.lengthMm).toBeLessThan(10.5);
});
