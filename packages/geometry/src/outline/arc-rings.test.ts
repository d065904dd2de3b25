import { expect, test } from 'vitest';
import { arcRingsArea, arcRingsLength, packArcRings, pickArcRings } from './arc-rings.ts';

/** A circle of radius 3 far from the origin in so many equal arcs. */
function circle(arcs: number): number[] {
  return Array.from({ length: arcs }, (_, k) => {
    const turn = (2 * Math.PI * k) / arcs;
    return [100 + 3 * Math.cos(turn), -50 + 3 * Math.sin(turn), Math.tan(Math.PI / (2 * arcs))];
  }).flat();
}

test.each([2, 3, 8, 25, 26, 100, 3000])(
  'a circle in %i arcs has the area and the length of the circle',
  (arcs) => {
    expect(arcRingsLength(packArcRings([circle(arcs)])) / (6 * Math.PI)).toBeCloseTo(1, 12);
    // bulges from 1 down to 0.0005: closed form and series; 3000 chords add rounding of 1e-16 each
    expect(arcRingsArea(packArcRings([circle(arcs)])) / (9 * Math.PI)).toBeCloseTo(1, 12);
  },
);

test('rings that are picked are those asked for, in that order', () => {
  const rings = packArcRings([circle(2), circle(5), [0, 0, 0, 4, 0, 0, 0, 4, 0]]);
  const picked = pickArcRings(rings, [2, 0]);
  expect([...picked.coords.slice(0, 6)]).toEqual([0, 0, 4, 0, 0, 4]);
  expect([...picked.ringEnds]).toEqual([3, 5]);
  expect(arcRingsArea(picked)).toBeCloseTo(8 + 9 * Math.PI, 12);
});
