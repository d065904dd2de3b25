import { booleans } from '@pourproof/arrangement';
import { medialAxis, outsideOf, reachedArea, strokeWidths } from '@pourproof/geometry';
import { type CleanRegion, perimeter, ringsBounds, signedArea } from '@pourproof/plane';
import { type Joins, offsetRegion } from '@pourproof/redraw';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyPolygon, between } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

const TOLERANCE_MM = 0.005;
const JOINS: readonly Joins[] = ['round', 'mitre', 'bevel'];
const moved = (region: CleanRegion, byMm: number, joins: Joins = 'mitre', keepMm = 0): CleanRegion =>
  offsetRegion(region, byMm, { joins, keepMm, toleranceMm: TOLERANCE_MM }).region;

describe('closed forms', () => {
  const [wide, high, by] = [40, 5, 0.25];
  const bar = cleanFrom([rectangle(3, 7, wide, high)]);
  const straight = wide * high + 2 * by * (wide + high);

  test.each([
    ['round', straight + Math.PI * by * by],
    ['mitre', straight + 4 * by * by],
    ['bevel', straight + 2 * by * by],
  ] as const)('a bar with %s corners', (joins, areaMm2) => {
    expect(signedArea(moved(bar, by, joins))).toBeCloseTo(areaMm2, 9);
  });

  test('a widened bar and a widened ring are wider by twice the move, to rounding', () => {
    const widthOf = (region: CleanRegion): number => strokeWidths(medialAxis(region)).narrowestMm ?? NaN;
    expect(widthOf(moved(bar, by))).toBeCloseTo(high + 2 * by, 9);
    expect(widthOf(moved(bar, -by))).toBeCloseTo(high - 2 * by, 9);
    const ring = cleanFrom([regular(240, 20)], [regular(240, 16)]);
    expect(widthOf(moved(ring, by)) - widthOf(ring)).toBeCloseTo(2 * by, 4);
    expect(widthOf(moved(ring, -by)) - widthOf(ring)).toBeCloseTo(-2 * by, 4);
  });

  test('a square hole becomes smaller with sharp corners, or larger with the corners that are asked for', () => {
    const frame = cleanFrom([rectangle(0, 0, 30, 30)], [rectangle(10, 10, 10, 10)]);
    const outer = (joins: Joins): number =>
      signedArea(moved(cleanFrom([rectangle(0, 0, 30, 30)]), by, joins));
    expect(signedArea(moved(frame, by))).toBeCloseTo(outer('mitre') - 9.5 ** 2, 9);
    const corners = { round: Math.PI, mitre: 4, bevel: 2 };
    for (const joins of JOINS) {
      expect(signedArea(moved(frame, -by, joins))).toBeCloseTo(
        29.5 ** 2 - (100 + 40 * by + corners[joins] * by * by),
        9,
      );
    }
  });

  test('a mitre that would reach beyond four moves stays round', () => {
    const needle = cleanFrom([[0, 0, 40, -2, 40, 2]]);
    const turn = Math.PI - 2 * Math.atan(2 / 40);
    const others = 2 * Math.tan((2 * Math.PI - turn) / 4) + turn / 2;
    expect(signedArea(moved(needle, by))).toBeCloseTo(
      signedArea(needle) + by * perimeter(needle) + by * by * others,
      8,
    );
  });
});

test('moved out and in again, a disc and whatever has no narrow places is what it was', () => {
  fc.assert(
    fc.property(between(0.05, 1.5), between(3, 20), (by, radius) => {
      const disc = cleanFrom([regular(90, radius)]);
      const back = moved(moved(disc, by, 'round'), -by, 'round');
      expect(signedArea(booleans(back, disc, 'xor'))).toBeLessThan((TOLERANCE_MM / 30) * perimeter(disc));
      const narrowed = moved(moved(disc, -by, 'mitre'), by, 'mitre');
      expect(signedArea(booleans(narrowed, disc, 'xor'))).toBeLessThan((TOLERANCE_MM / 30) * perimeter(disc));
    }),
    cases(6),
  );
});

test('round offsets have the area that the axis tells, in and out, and all joins give clean regions', () => {
  fc.assert(
    fc.property(anyPolygon, between(0.02, 2), fc.constantFrom(...JOINS), (region, by, joins) => {
      const inner = moved(region, -by, 'round');
      const wood = outsideOf(region, 8 * by + 1);
      const outer = moved(region, by, 'round');
      const slack = (TOLERANCE_MM * (perimeter(region) + 50 * by)) / 50;
      expect(Math.abs(signedArea(inner) - reachedArea(medialAxis(region), by, 0))).toBeLessThan(slack);
      // the frame moves in by as much
      const [minX, minY, maxX, maxY] = ringsBounds(wood);
      const shrunk = (maxX - minX - 2 * by) * (maxY - minY - 2 * by);
      expect(Math.abs(shrunk - signedArea(outer) - reachedArea(medialAxis(wood), by, 0))).toBeLessThan(slack);
      for (const made of [moved(region, by, joins), moved(region, -by, joins)]) {
        expect(cleanRegionFaults(made)).toEqual([]);
      }
    }),
    cases(20),
  );
});
