import { resolveRegions } from '@pourproof/arrangement';
import { packRings, perimeter, type Rings, radians, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { cleanRegionFaults } from '../../../../tests/support/oracles/clean-region-faults.ts';
import { endGrainLength } from '../measure/grain-length.ts';
import { sweepAlong } from './sweep-along.ts';
import { sweepTouches } from './sweep-touches.ts';

function regionOf(...rings: number[][]) {
  return resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region;
}

function box(x: number, y: number, width: number, height: number): number[] {
  return [x, y, x + width, y, x + width, y + height, x, y + height];
}

const bar = regionOf(box(0, 0, 30, 4));
const disc = regionOf(
  Array.from({ length: 400 }, (_, i) => (Math.PI * i) / 200).flatMap((t) => [
    5 * Math.cos(t),
    5 * Math.sin(t),
  ]),
);

describe('sweepAlong', () => {
  test.each([
    [0, 16],
    [90, 120],
  ])('of a bar with the fibre at %d° by 2 mm stains %d mm²', (grainDeg, area) => {
    expect(sweepAlong(bar, radians(grainDeg), 2).areaMm2).toBeCloseTo(area, 6);
  });

  test('has the area length × grain length where nothing overlaps', () => {
    for (const region of [bar, disc]) {
      for (let grainDeg = 0; grainDeg < 180; grainDeg += 13) {
        const grainRad = radians(grainDeg);
        const { region: band, areaMm2 } = sweepAlong(region, grainRad, 1.5);
        // bands bend by at most the grid along their outline
        const bound = 2e-6 * perimeter(band) + 1e-9;
        expect(Math.abs(areaMm2 - 1.5 * endGrainLength(region, grainRad))).toBeLessThan(bound);
        expect(signedArea(band)).toBe(areaMm2);
      }
    }
  });

  test('of a ring fills its counter only as far as it reaches, and all of it at last', () => {
    const frame = regionOf(box(0, 0, 20, 10), box(2, 2, 16, 6));
    expect(sweepAlong(frame, 0, 3).areaMm2).toBeCloseTo(2 * 3 * 10 + 2 * 3 * 6, 6);
    // from both sides 12 mm into a counter 16 mm wide: it is full, not counted twice
    expect(sweepAlong(frame, 0, 12).areaMm2).toBeCloseTo(2 * 12 * 10 + 16 * 6, 6);
  });

  test('stops nowhere at a second stroke but does not count it', () => {
    const two = regionOf(box(0, 0, 10, 10), box(12, 0, 10, 10));
    expect(sweepAlong(two, 0, 5).areaMm2).toBeCloseTo(5 * 10 + 2 * 10 + 5 * 10, 6);
    expect(cleanRegionFaults(sweepAlong(two, radians(20), 5).region)).toEqual([]);
  });

  test('by nothing is empty; a negative length is refused', () => {
    expect(sweepAlong(bar, 1, 0).areaMm2).toBe(0);
    expect(() => sweepAlong(bar, 1, -1)).toThrow(RangeError);
  });
});

describe('sweepTouches', () => {
  const two = regionOf(box(0, 0, 10, 10), box(12, 4, 10, 10));

  test('a stroke 2 mm further along the fibre is reached by 2 mm and not by less', () => {
    expect(sweepTouches(two, 0, 1.999)).toEqual([]);
    const [touch, ...others] = sweepTouches(two, 0, 2.001);
    expect(others).toEqual([]);
    expect(touch).toMatchObject({ kind: 'neighbour', rings: [0, 1] });
    expect(touch!.gapMm).toBeCloseTo(2, 9);
    expect(touch!.acrossMm).toBeCloseTo(6, 9);
    expect(touch!.atMm[0]).toBeCloseTo(11, 9);
    expect(touch!.atMm[1]).toBeGreaterThanOrEqual(4 - 1e-9);
    expect(touch!.atMm[1]).toBeLessThanOrEqual(10 + 1e-9);
  });

  test('across the fibre it is not reached', () => {
    expect(sweepTouches(two, Math.PI / 2, 5)).toEqual([]);
  });

  test('turned with its fibre it gives the same touch', () => {
    const a = radians(37);
    const turned = regionOf(
      ...[box(0, 0, 10, 10), box(12, 4, 10, 10)].map((ring) =>
        ring.map((_, i) =>
          i % 2 === 0
            ? ring[i]! * Math.cos(a) - ring[i + 1]! * Math.sin(a)
            : ring[i - 1]! * Math.sin(a) + ring[i]! * Math.cos(a),
        ),
      ),
    );
    const [touch, ...others] = sweepTouches(turned, -a, 3);
    expect(others).toEqual([]);
    expect(touch!.kind).toBe('neighbour');
    expect(touch!.gapMm).toBeCloseTo(2, 9);
    expect(touch!.acrossMm).toBeCloseTo(6, 9);
  });

  test('the counter of a ring is its own part', () => {
    const frame = regionOf(box(0, 0, 20, 10), box(2, 2, 16, 6));
    expect(sweepTouches(frame, 0, 15)).toEqual([]);
    expect(sweepTouches(frame, Math.PI / 2, 6.001).map((touch) => touch.kind)).toEqual(['same-part']);
  });

  test('an island in a counter is a neighbour on both sides', () => {
    const island = regionOf(box(0, 0, 20, 10), box(2, 2, 16, 6), box(8, 4, 3, 2));
    const touches = sweepTouches(island, 0, 8);
    expect(touches.map((touch) => touch.kind)).toEqual(['neighbour']);
    expect(touches[0]!.gapMm).toBeCloseTo(6, 9);
  });

  test('a slanting gap is reached only where it is short enough', () => {
    const slanting = regionOf(box(0, 0, 10, 10), [11, 0, 25, 0, 25, 10, 21, 10]);
    const [touch] = sweepTouches(slanting, 0, 3);
    expect(touch!.gapMm).toBeCloseTo(1, 9);
    expect(touch!.acrossMm).toBeCloseTo(2, 9);
  });

  test('pairs of parts side by side along the fibre are one place each, however their corners interleave', () => {
    // the corners of the second pair cut the sweep into slabs within the gap of the first
    const pairs = regionOf(box(0, 0, 10, 12), box(12, 0, 10, 12), box(40, 3, 10, 3), box(53, 3, 10, 6));
    const touches = sweepTouches(pairs, 0, 4);
    expect(touches.map(({ gapMm }) => gapMm).sort()).toEqual([expect.closeTo(2, 9), expect.closeTo(3, 9)]);
    const across = touches.map(({ acrossMm }) => acrossMm).sort((a, b) => a - b);
    expect(across).toEqual([expect.closeTo(3, 9), expect.closeTo(12, 9)]);
  });

  test('a pair whose wall bends on the way is one place, though another pair ends in between', () => {
    const bent = [12, 0, 22, 0, 22, 12, 13, 12, 12, 6];
    const pairs = regionOf(box(0, 0, 10, 12), bent, box(40, 3, 10, 5), box(53, 3, 10, 5));
    const touches = sweepTouches(pairs, 0, 4);
    expect(touches.map(({ acrossMm }) => acrossMm)).toEqual([expect.closeTo(12, 9), expect.closeTo(5, 9)]);
  });

  test('the edge of the board is reached where a stroke comes near it along the fibre', () => {
    const board: Rings = packRings([box(-4, -20, 60, 60)]);
    const touches = sweepTouches(bar, 0, 5, board);
    expect(touches).toHaveLength(1);
    expect(touches[0]).toMatchObject({ kind: 'board-edge', rings: [-1, 0] });
    expect(touches[0]!.gapMm).toBeCloseTo(4, 9);
    expect(touches[0]!.acrossMm).toBeCloseTo(4, 9);
    expect(sweepTouches(bar, 0, 3.9, board)).toEqual([]);
  });

  test('nothing cut touches nothing; a length that is no length is refused', () => {
    expect(sweepTouches(regionOf(), 0, 5)).toEqual([]);
    expect(() => sweepTouches(two, 0, Number.NaN)).toThrow(RangeError);
  });
});
