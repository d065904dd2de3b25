import { reachedOutline } from '@pourproof/cutting';
import { arcRingsArea, leftStanding, medialAxis, openedArea } from '@pourproof/geometry';
import { type CleanRegion, signedArea, transformRings } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridCells, holedStars, one, starRing, stars, untangled } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { expectSound } from '../support/oracles/expect-sound.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

/** Any region of a kind has a sound axis. */
function expectAnySound(kind: fc.Arbitrary<CleanRegion>): void {
  fc.assert(
    fc.property(kind, (region) => expectSound(region, 'any')),
    cases(60),
  );
}

describe('the medial axis meets its definition', () => {
  test('on stars, from round to spiky', () => {
    expectAnySound(stars([5, 64], [2, 10]));
  });

  test('on stars with holes', () => {
    expectAnySound(holedStars);
  });

  test('on untangled random polygons', () => {
    expectAnySound(untangled([3, 90]));
  });

  test('on grid cells, where parallel walls and touching corners abound', () => {
    expectAnySound(gridCells([1, 10], [0.4, 0.9]));
  });

  test('on rings with as many corners inside as outside, all walls parallel', () => {
    for (const corners of [3, 4, 7, 100]) {
      expectSound(cleanFrom([regular(corners, 5)], [regular(corners, 3)]), `${corners} corners`);
    }
  });

  test('on 20,000 corners of one circle', () => {
    expectSound(cleanFrom([regular(20_000, 5)]), 'disc');
  });

  test('on a ring of teeth whose tips all lie on one circle', () => {
    const teeth = 400;
    const ring = Array.from({ length: 2 * teeth }, (_, i) => {
      const t = (Math.PI * i) / teeth;
      const radius = i % 2 === 0 ? 10 : 6;
      return [radius * Math.cos(t), radius * Math.sin(t)];
    }).flat();
    expectSound(cleanFrom([ring]), 'gear');
  });

  test('on a comb of 300 teeth', () => {
    const ring = [0, 20, 0, 0];
    for (let k = 0; k < 300; k++) {
      ring.push(k + 0.4, 0, k + 0.4, -10 - (k % 7), k + 0.9, -10 - (k % 7), k + 0.9, 0);
    }
    ring.push(300, 0, 300, 20);
    expectSound(cleanFrom([ring]), 'comb');
  });

  test('far from the origin, at extreme scales, and with edges a millionth of the whole', () => {
    const region = cleanFrom([one(starRing([60, 60], [3, 10]), 7)], [one(starRing([12, 12], [0.5, 2]), 8)]);
    for (const scale of [1e-6, 1, 1e6]) {
      for (const shift of [0, 1e4]) {
        const moved = transformRings([scale, 0, 0, scale, shift * scale, -shift * scale], region);
        expectSound(moved, `scale ${scale}, shifted by ${shift}`);
      }
    }
    const nicked = [0, 0, 10, 0, 10, 4, 5 + 1e-5, 4, 5 + 1e-5, 4 - 1e-5, 5, 4 - 1e-5, 5, 4, 0, 4];
    expectSound(cleanFrom([nicked]), 'nick');
  });

  test('on an empty region it is empty', () => {
    const axis = medialAxis(cleanFrom([]));
    expect(axis.nodeR.length).toBe(0);
    expect(openedArea(axis, 1)).toBe(0);
    expect(reachedOutline(axis, 1, 1).ringEnds.length).toBe(0);
    expect(leftStanding(axis, 1, 0.01)).toEqual({ pieces: [], facetCount: 0, facetAreaMm2: 0 });
  });
});

describe('what is cut and what is left', () => {
  const shares = [0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.97, 1.02];

  /** Area by cells, area of the outline and area less what stands are three ways to one number: equal up to rounding. */
  function expectOneArea(region: CleanRegion): void {
    const axis = medialAxis(region);
    const whole = signedArea(region);
    const largest = axis.nodeR.reduce((a, b) => Math.max(a, b), 0);
    let before = whole;
    for (const share of shares) {
      const radius = share * largest;
      const area = openedArea(axis, radius);
      const { pieces, facetAreaMm2 } = leftStanding(axis, radius, 0.01);
      const standing = pieces.reduce((sum, piece) => sum + piece.areaMm2, facetAreaMm2);
      expect(Math.abs(area - arcRingsArea(reachedOutline(axis, radius, radius)))).toBeLessThan(1e-9 * whole);
      expect(Math.abs(whole - area - standing)).toBeLessThan(1e-9 * whole);
      expect(area, 'a larger bit cuts less').toBeLessThanOrEqual(before * (1 + 1e-12));
      before = area;
    }
    expect(before, 'a bit that fits nowhere cuts nothing').toBe(0);
  }

  test('agree in three ways on random regions at every radius', () => {
    const kinds = [stars([5, 64], [2, 10]), holedStars, untangled([3, 40]), gridCells([1, 8], [0.6, 0.9])];
    for (const kind of kinds) {
      fc.assert(
        fc.property(kind, (region) => expectOneArea(region)),
        cases(30),
      );
    }
  });

  test('discs that overlap in a short bottleneck leave two cusps at its walls', () => {
    const ring = [0, 0, 6, 0, 6, 2, 6.2, 2, 6.2, 0, 12, 0, 12, 6, 6.2, 6, 6.2, 3.5, 6, 3.5, 6, 6, 0, 6];
    const axis = medialAxis(cleanFrom([ring]));
    const cusps = leftStanding(axis, 1, 0.001).pieces.filter((piece) => piece.kind !== 'corner');
    expect(cusps.length).toBe(2);
    expect(cusps[0].areaMm2).toBeCloseTo(cusps[1].areaMm2, 12);
  });

  test('a slot 20 × 4 mm with a 3.175 mm bit', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 4)]));
    const want = 80 - (4 - Math.PI) * 1.5875 ** 2;
    expect(want).toBeCloseTo(77.83676, 3);
    expect(openedArea(axis, 1.5875)).toBeCloseTo(want, 12);
  });
});
