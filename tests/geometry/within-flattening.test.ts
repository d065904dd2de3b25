import { resolveRegions } from '@pourproof/arrangement';
import { readSvg } from '@pourproof/artwork/svg';
import { curvedEdges, hardlyNarrower, medialAxis, withinFlattening } from '@pourproof/geometry';
import {
  type CleanRegion,
  type Rings,
  ringStart,
  signedArea,
  transformRings,
  translation,
} from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon, between, magnitude } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, rectangle } from '../support/shapes/clean-from.ts';

const TOLERANCES_MM = [0.001, 0.005, 0.02, 0.05];
const ring = (path: string, toleranceMm: number): CleanRegion => {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="-100 -100 200 200"><path fill-rule="evenodd" d="${path}"/></svg>`;
  const { region } = resolveRegions(readSvg(svg, { toleranceMm }).shapes.map((shape) => shape.region));
  // the reader counts from the page's corner
  return transformRings(translation(-100, -100), region);
};
const circle = (r: number): string => `M${r} 0A${r} ${r} 0 1 1 ${-r} 0A${r} ${r} 0 1 1 ${r} 0z`;

/** Whether a point lies inside rings: a ray from it crosses them an odd number of times. */
function isIn(rings: Rings, x: number, y: number): boolean {
  const { coords, ringEnds } = rings;
  let inside = false;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = ringEnds[k]!;
    for (let i = from, j = to - 1; i < to; j = i++) {
      const [xi, yi, xj, yj] = [coords[2 * i]!, coords[2 * i + 1]!, coords[2 * j]!, coords[2 * j + 1]!];
      if (yi > y !== yj > y && x < xi + ((y - yi) / (yj - yi)) * (xj - xi)) {
        inside = !inside;
      }
    }
  }
  return inside;
}

test('points of an ellipse and of cubics lie in the outer region and not in the inner one', () => {
  fc.assert(
    fc.property(
      between(3, 60),
      between(0.1, 1),
      magnitude(-3, -1.3),
      fc.array(between(-30, 30), { minLength: 6, maxLength: 6 }),
      (a, flat, toleranceMm, handles) => {
        const b = Math.max(0.5, a * flat);
        const oval = ring(`M${a} 0A${a} ${b} 0 1 1 ${-a} 0A${a} ${b} 0 1 1 ${a} 0z`, toleranceMm);
        const [x1, y1, x2, y2, x3, y3] = handles as [number, number, number, number, number, number];
        const bow = ring(`M0 0C${x1} ${y1} ${x2} ${y2} ${x3} ${y3}L90 90z`, toleranceMm);
        const cubic = (t: number): [number, number] => {
          const [u, v] = [1 - t, t];
          return [
            3 * u * u * v * x1 + 3 * u * v * v * x2 + v ** 3 * x3,
            3 * u * u * v * y1 + 3 * u * v * v * y2 + v ** 3 * y3,
          ];
        };
        const ellipse = (t: number): [number, number] => [
          a * Math.cos(2 * Math.PI * t),
          b * Math.sin(2 * Math.PI * t),
        ];
        for (const [region, at] of [
          [oval, ellipse],
          [bow, cubic],
        ] as const) {
          const { least, most } = withinFlattening(region, toleranceMm);
          expect(signedArea(least)).toBeLessThanOrEqual(signedArea(region));
          expect(signedArea(most)).toBeGreaterThanOrEqual(signedArea(region));
          for (let k = 1; k < 200; k++) {
            const [x, y] = at((k + 0.37) / 201);
            if (region === oval) {
              expect(isIn(least, x, y), `${a} ${b} ${toleranceMm} at ${x},${y}`).toBe(false);
            }
            // beside a corner, drawn or where the curve crosses itself, a chord may be told as straight: docs/method/stated-bounds.md
            if (region === oval || isBesideChord(region, x, y, toleranceMm)) {
              expect(isIn(most, x, y), `${handles} ${toleranceMm} at ${x},${y}`).toBe(true);
            }
          }
        }
      },
    ),
    cases(8),
  );
});

/** Whether an edge of the outline that ends in no corner comes within a distance of a point. */
function isBesideChord({ coords, ringEnds }: Rings, x: number, y: number, mm: number): boolean {
  for (let k = 0; k < ringEnds.length; k++) {
    const from = k === 0 ? 0 : ringEnds[k - 1]!;
    const count = ringEnds[k]! - from;
    const at = (i: number): [number, number] => {
      const p = from + ((i + count) % count);
      return [coords[2 * p]!, coords[2 * p + 1]!];
    };
    const isCorner = (i: number): boolean => {
      const [[ax, ay], [bx, by], [cx, cy]] = [at(i - 1), at(i), at(i + 1)];
      const cos = (bx - ax) * (cx - bx) + (by - ay) * (cy - by);
      return cos < 0.5 * Math.hypot(bx - ax, by - ay) * Math.hypot(cx - bx, cy - by);
    };
    for (let i = 0; i < count; i++) {
      const [[ax, ay], [bx, by]] = [at(i), at(i + 1)];
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
      if (Math.hypot(x - ax - t * dx, y - ay - t * dy) < mm) {
        return !isCorner(i) && !isCorner(i + 1);
      }
    }
  }
  return false;
}

test('strips grow and shrink a ring by the tolerance all round, and leave straight walls to the bit', () => {
  for (const toleranceMm of TOLERANCES_MM) {
    const region = ring(circle(40) + circle(39), toleranceMm);
    const { least, most } = withinFlattening(region, toleranceMm);
    const strip = 2 * Math.PI * 79 * toleranceMm;
    expect((signedArea(region) - signedArea(least)) / strip).toBeCloseTo(1, 2);
    expect((signedArea(most) - signedArea(region)) / strip).toBeCloseTo(1, 2);
    const slot = ring('M0 0h30a5 5 0 0 1 0 10h-30a5 5 0 0 1 0-10z', toleranceMm);
    const straight = curvedEdges(slot, toleranceMm).reduce((count, curved) => count + 1 - curved, 0);
    expect(straight).toBe(2);
    for (const part of Object.values(withinFlattening(slot, toleranceMm))) {
      expect(isIn(part, 15, 1e-9)).toBe(true);
      expect(isIn(part, 15, -1e-9)).toBe(false);
    }
  }
});

test('artwork of straight lines is told exactly, however many corners it has', () => {
  fc.assert(
    fc.property(anyPolygon, (region) => {
      const { least, most } = withinFlattening(region, 1e-9);
      expect(least).toBe(region);
      expect(most).toBe(region);
    }),
    cases(20),
  );
});

test('a stroke that is short of the bit was drawn as wide only where both its walls are curves, or half as short beside one', () => {
  const narrower = (region: CleanRegion, radiusMm: number): readonly [boolean, number] => {
    const { fitsAsDrawn, tooNarrow } = hardlyNarrower(medialAxis(region), radiusMm, 0.005);
    return [fitsAsDrawn, tooNarrow.length];
  };
  const bar = (width: number): CleanRegion => cleanFrom([rectangle(0, 0, 30, width)]);
  expect(narrower(bar(0.999), 0.5)).toEqual([false, 1]);
  expect(narrower(bar(1), 0.5)).toEqual([false, 0]);
  expect(narrower(bar(0.98), 0.5)).toEqual([false, 0]);
  expect(narrower(ring(circle(40) + circle(39), 0.005), 0.5)).toEqual([true, 0]);
  expect(narrower(ring(circle(40) + circle(39.02), 0.005), 0.5)).toEqual([false, 0]);
  expect(narrower(ring(circle(0.5), 0.005), 0.5)).toEqual([true, 0]);
  expect(narrower(cleanFrom([rectangle(0, 0, 0.999, 0.999)]), 0.5)).toEqual([false, 0]);
});

test('beside half a circle the strip is as wide as the tolerance along all chords, and ends square beyond them', () => {
  for (const toleranceMm of [0.005, 0.02]) {
    const half = ring('M10 0A10 10 0 0 1 -10 0z', toleranceMm);
    const { coords } = half;
    const along = Array.from({ length: coords.length / 2 }, (_, i) => {
      const j = (2 * i + 2) % coords.length;
      return [coords[j]! - coords[2 * i]!, coords[j + 1]! - coords[2 * i + 1]!] as const;
    });
    const chords = along.filter(([x, y]) => Math.hypot(x, y) < 19);
    // beside its chords, at the mitres between them, and in a square beyond either end
    const length = chords.reduce((sum, [x, y]) => sum + Math.hypot(x, y), 0);
    const turn = Math.PI / chords.length;
    const mitres = (chords.length - 1) * Math.tan(turn / 2);
    const strip = toleranceMm * length + toleranceMm ** 2 * (mitres + 2);
    const { most, least } = withinFlattening(half, toleranceMm);
    expect((signedArea(most) - signedArea(half)) / strip).toBeCloseTo(1, 2);
    expect((signedArea(half) - signedArea(least)) / toleranceMm / length).toBeCloseTo(1, 2);
  }
});
