import { leftStanding, type MedialAxis, medialAxis, openedArea } from '@pourproof/geometry';
import { type CleanRegion, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { between, gridCells, polygonFamilies } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

/** Cutters asked about for one region. */
const MOST_RADII = 40;

/** That what a cutter leaves and what it opens is all of a region. */
function expectBalance(axis: MedialAxis, radius: number): void {
  const whole = signedArea(axis.region);
  const { pieces, facetAreaMm2 } = leftStanding(axis, radius, 0.005);
  const left = pieces.reduce((sum, { areaMm2 }) => sum + areaMm2, facetAreaMm2);
  expect(Math.abs(left - (whole - openedArea(axis, radius))), `radius ${radius}`).toBeLessThan(1e-7 * whole);
}

/** The same of cutters as large as the clearance of a node, of which several discs lie on each other or meet in a point. */
function expectBalanceAtNodes(region: CleanRegion): void {
  const axis = medialAxis(region);
  const clearances = [...new Set(axis.nodeR)].filter((r) => r > 1e-6).sort((a, b) => a - b);
  const step = Math.max(1, Math.floor(clearances.length / MOST_RADII));
  for (let k = 0; k < clearances.length; k += step) {
    expectBalance(axis, clearances[k]);
  }
}

/** A plate of unit cells with a splinter of three corners in each, turned and moved by chance. */
function splintered(across: number): fc.Arbitrary<CleanRegion> {
  const splinter = fc.record({
    turn: between(0, Math.PI),
    dx: between(-0.15, 0.15),
    dy: between(-0.15, 0.15),
  });
  return fc.array(splinter, { minLength: across ** 2, maxLength: across ** 2 }).map((splinters) => {
    const holes = splinters.map(({ turn, dx, dy }, k) => {
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const [x, y] = [(k % across) + dx, Math.floor(k / across) + dy];
      return [0, 1, 2].flatMap((i) => {
        const [u, v] = [0.28 * Math.cos((i * Math.PI) / 1.5), 0.084 * Math.sin((i * Math.PI) / 1.5)];
        return [x + c * u - s * v, y + s * u + c * v];
      });
    });
    return cleanFrom([rectangle(-1.5, -1.5, across + 2, across + 2)], holes);
  });
}

describe('what a cutter as large as the clearance at a node leaves, and what it opens, is all', () => {
  test.each<[string, fc.Arbitrary<CleanRegion>, number]>([
    ['cells of a grid', gridCells([4, 9], [8, 60]), 10],
    ...Object.entries(polygonFamilies).map(([name, family]): [string, fc.Arbitrary<CleanRegion>, number] => [
      name,
      family,
      8,
    ]),
  ])('of %s', (_, regions, times) => {
    fc.assert(fc.property(regions, expectBalanceAtNodes), cases(times));
  });

  test('of regular holes in a regular plate, whose nodes are all alike', () => {
    for (const corners of [3, 4, 6, 12]) {
      const holes = Array.from({ length: 36 }, (_, k) =>
        regular(corners, 0.7, 2 * (k % 6), 2 * Math.floor(k / 6), 0.1),
      );
      expectBalanceAtNodes(cleanFrom([rectangle(-2, -2, 14, 14)], holes));
    }
  });
});

test('discs that meet in a corner of one of hundreds of holes leave all that they do not open', () => {
  // three discs through one corner: rounding says which of them an arc ends by
  fc.assert(
    fc.property(
      splintered(18),
      fc.array(between(0.53, 0.6), { minLength: 8, maxLength: 8 }),
      (region, radii) => {
        const axis = medialAxis(region);
        for (const radius of radii) {
          expectBalance(axis, radius);
        }
      },
    ),
    cases(1),
  );
});

test('a clearance that falls by rounding where it should rise does not lead past a crossing', () => {
  // left by a redrawn outline 3 m from zero: two nodes that are 1e-8 mm apart in clearance, the wrong way round, with the radius between them
  const ring: readonly (readonly [number, number])[] = [
    [1575.070303103973, 483.55657521568537],
    [1620.4877992835513, 471.5791847498908],
    [1627.0137711476689, 470.02266202641624],
    [1627.0144918746948, 470.02249012435834],
    [1627.0152136080087, 470.0223224974287],
    [1633.5502971115864, 468.5045098076652],
    [1633.5510188449, 468.50434218073565],
    [1633.551741559143, 468.5041788348241],
    [1640.0957070884403, 467.0251295079528],
    [1653.2137089750465, 464.18258598106274],
  ];
  expectBalance(medialAxis(cleanFrom([ring.flat()])), 0.25);
});
