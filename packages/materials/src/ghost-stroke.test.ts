import fc from 'fast-check';
import { expect, test } from 'vitest';
import { flatClearFill, flatGhostWidthMm, veeClearFill, veeGhostWidthMm } from './ghost-stroke.ts';

test.each([
  [30, 0.414],
  [60, 0.462],
  [90, 0.566],
])('a %d° V with 0.1 mm of seal is all clear below %d mm', (angleDeg, widthMm) => {
  expect(veeGhostWidthMm(angleDeg, 0.1)).toBeCloseTo(widthMm, 3);
  expect(veeClearFill(widthMm - 0.001, angleDeg, 0.1).clearShare).toBe(1);
  expect(veeClearFill(widthMm + 0.001, angleDeg, 0.1).clearShare).toBeLessThan(1);
});

test('a 0.5 mm stroke of a 60° V with 0.1 mm of seal is 92.4 % clear, 0.416 mm deep', () => {
  const fill = veeClearFill(0.5, 60, 0.1);
  expect(fill.clearShare).toBeCloseTo(0.924, 3);
  expect(fill.pooledMm).toBeCloseTo(0.416, 3);
  expect(fill.pooledMm + fill.colourDepthMm).toBeCloseTo(0.433, 3);
});

test('a 0.8 mm flat stroke 3.2 mm deep with 0.1 mm of seal is 28.1 % clear', () => {
  expect(flatClearFill(0.8, 3.2, 0.1).clearShare).toBeCloseTo(0.281, 3);
});

test('the pool holds the film of the walls: areas of the sections are equal', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 20, noNaN: true }),
      fc.double({ min: 15, max: 120, noNaN: true }),
      fc.double({ min: 0.001, max: 0.05, noNaN: true }),
      (width, angleDeg, film) => {
        const slope = Math.tan((angleDeg * Math.PI) / 360);
        const wall = Math.hypot(width / 2, width / (2 * slope));
        const { pooledMm } = veeClearFill(width, angleDeg, film);
        // a V of depth h is h·tan(A/2) wide either side
        expect(pooledMm ** 2 * slope).toBeCloseTo(2 * wall * film, 9);
        const flat = flatClearFill(width, 3, film);
        expect(flat.pooledMm * width).toBeCloseTo(film * (width + 6), 9);
      },
    ),
  );
});

test('the flat ghost width is where the drained film fills the cut', () => {
  const width = flatGhostWidthMm(3, 0.1);
  expect(flatClearFill(width, 3, 0.1).pooledMm).toBeCloseTo(3, 12);
  expect(flatClearFill(width * 1.01, 3, 0.1).pooledMm).toBeLessThan(3);
  expect(flatGhostWidthMm(0.1, 0.1)).toBe(Infinity);
});

test('film that stays on the walls narrows the colour at the face: two films, slanted in a V', () => {
  expect(flatClearFill(2, 3, 0.1).colourWidthMm).toBeCloseTo(1.8, 12);
  // the walls of a 90° V stand at 45°: a film of 0.1 mm is √2 times as wide at the face
  expect(veeClearFill(2, 90, 0.1).colourWidthMm).toBeCloseTo(2 - 0.2 * Math.SQRT2, 12);
  expect(flatClearFill(0.15, 3, 0.1).colourWidthMm).toBe(0);
});

test('no film leaves the whole section for colour', () => {
  expect(flatClearFill(1, 3, 0)).toEqual({ clearShare: 0, pooledMm: 0, colourDepthMm: 3, colourWidthMm: 1 });
  expect(veeClearFill(2, 90, 0).colourDepthMm).toBeCloseTo(1, 12);
});

test('sizes of 0, a flat V and a negative film are refused', () => {
  expect(() => flatClearFill(0, 3, 0.1)).toThrow(RangeError);
  expect(() => veeClearFill(1, 180, 0.1)).toThrow(RangeError);
  expect(() => flatClearFill(1, 3, -0.1)).toThrow(RangeError);
});
