import { combineShapes, resolveRegions } from '@pourproof/arrangement';
import { type DrawnShape, type FillRule, packRings, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outlineCrossings } from './outline-crossings.ts';

const TOLERANCE_MM = 0.005;

/** A circle flattened as a reader may: each point within the tolerance of it, some within and some without. */
function circle(x: number, y: number, radius: number, turn = 0): number[] {
  const points = Math.ceil(Math.PI / Math.acos(1 - TOLERANCE_MM / radius));
  const outward = radius + TOLERANCE_MM / 2;
  return Array.from({ length: points }, (_, k) => (2 * Math.PI * (k + turn)) / points).flatMap((angle) => [
    x + outward * Math.cos(angle),
    y + outward * Math.sin(angle),
  ]);
}

const shape = (rings: readonly (readonly number[])[], fillRule: FillRule = 'nonzero'): DrawnShape => ({
  region: { ...packRings(rings), fillRule },
  layer: '',
  colour: '#000000',
  source: '',
});
const crossingsOf = (shapes: readonly DrawnShape[]): ReturnType<typeof outlineCrossings> =>
  outlineCrossings(shapes, resolveRegions(shapes.map(({ region }) => region)).region, TOLERANCE_MM);

/** Area common to two circles of one radius. */
const lens = (radius: number, apart: number): number =>
  2 * radius * radius * Math.acos(apart / (2 * radius)) -
  (apart / 2) * Math.sqrt(4 * radius * radius - apart * apart);

describe('outlines', () => {
  const turns = fc.double({ min: 0, max: 1, noNaN: true });
  const radii = fc.double({ min: 1, max: 60, noNaN: true });

  test('that touch, from within or without, do not cross, however they are flattened', () => {
    fc.assert(
      fc.property(radii, radii, turns, turns, fc.boolean(), fc.boolean(), (r, s, a, b, isWithin, isOne) => {
        const apart = isWithin ? Math.abs(r - s) : r + s;
        const rings = [circle(0, 0, r, a), circle(apart, 0, s, b)];
        const shapes = isOne ? [shape(rings, 'evenodd')] : rings.map((ring) => shape([ring]));
        expect(crossingsOf(shapes)).toMatchObject({ count: 0, isOwn: false, leftAsWood: [] });
      }),
    );
  });

  test('that overlap by more than flattening do', () => {
    fc.assert(
      fc.property(radii, radii, turns, fc.double({ min: 0.06, max: 0.9, noNaN: true }), (r, s, a, share) => {
        const apart = r + s - share * Math.min(r, s);
        const found = crossingsOf([shape([circle(0, 0, r, a)]), shape([circle(apart, 0, s)])]);
        expect(found).toMatchObject({ count: 2, isOwn: false, leftAsWood: [] });
      }),
    );
  });

  test('that overlap by even-odd leave their common part as wood, with its area', () => {
    fc.assert(
      fc.property(radii, turns, fc.double({ min: 0.2, max: 1.8, noNaN: true }), (r, a, share) => {
        const { isOwn, leftAsWood } = crossingsOf([
          shape([circle(0, 0, r, a), circle(share * r, 0, r)], 'evenodd'),
        ]);
        expect(isOwn).toBe(true);
        expect(leftAsWood).toHaveLength(1);
        const want = lens(r, share * r);
        expect(Math.abs(signedArea(leftAsWood[0]!) - want)).toBeLessThan(2 * TOLERANCE_MM * 2 * Math.PI * r);
      }),
    );
  });

  test('one inside another is a hole and no part that is left', () => {
    expect(crossingsOf([shape([circle(0, 0, 10), circle(1, 0, 5)], 'evenodd')])).toMatchObject({
      count: 0,
      leftAsWood: [],
    });
  });

  test('what another shape paints is not left', () => {
    const pair = shape([circle(0, 0, 10), circle(10, 0, 10)], 'evenodd');
    expect(crossingsOf([pair, shape([circle(5, 0, 12)])]).leftAsWood).toEqual([]);
  });

  test('a part that is left around an island has its hole', () => {
    const square = (side: number): number[] => [-side, -side, side, -side, side, side, -side, side];
    const wide = [-30, -8, 30, -8, 30, 8, -30, 8];
    const tall = [-8, -30, 8, -30, 8, 30, -8, 30];
    const { leftAsWood } = crossingsOf([shape([wide, tall], 'evenodd'), shape([square(2)])]);
    expect(leftAsWood.map((part) => [part.ringEnds.length, signedArea(part)])).toEqual([[2, 256 - 16]]);
    const filled = combineShapes([shape([square(2)]).region], [], 'union');
    expect(signedArea(filled)).toBe(16);
  });

  test('a star that crosses itself leaves its middle by even-odd and nothing by nonzero', () => {
    const star = [0, 1, 2, 3, 4].flatMap((k) => {
      const angle = (4 * Math.PI * k) / 5;
      return [20 * Math.sin(angle), -20 * Math.cos(angle)];
    });
    const inner = 20 * (Math.cos((2 * Math.PI) / 5) / Math.cos(Math.PI / 5));
    const pentagon = (5 / 2) * inner * inner * Math.sin((2 * Math.PI) / 5);
    const left = crossingsOf([shape([star], 'evenodd')]);
    expect(left.isOwn).toBe(true);
    expect(left.leftAsWood.map(signedArea)).toEqual([expect.closeTo(pentagon, 6)]);
    expect(crossingsOf([shape([star])])).toMatchObject({ count: 5, leftAsWood: [] });
  });
});
