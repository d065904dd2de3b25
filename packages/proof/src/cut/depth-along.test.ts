import { resolveRegions } from '@pourproof/arrangement';
import { veeCutter } from '@pourproof/cutting';
import { parseBit } from '@pourproof/job';
import { type CleanRegion, type Point, packRings, ringCoords } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { type CutShape, cutShape } from './cut-shape.ts';
import { depthAlong } from './depth-along.ts';

const region = (...rings: number[][]): CleanRegion =>
  resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region;
/** A bar 40 by 4 mm with one of 40 by 2 mm below it. */
const BARS = region([0, 0, 40, 0, 40, 4, 0, 4], [0, 10, 40, 10, 40, 12, 0, 12]);

test('beside a V groove it is that of the stroke there, beside its end too', () => {
  const along = depthAlong(BARS, cutShape([parseBit('vee:60deg:1/2in')], 3), 3);
  // half of the width over tan 30°, at most the depth of the job
  expect(along([40, 12], [0, 12])).toBeCloseTo(Math.sqrt(3), 6);
  expect(along([40, 10], [40, 12])).toBeCloseTo(Math.sqrt(3), 6);
  expect(along([0, 0], [40, 0])).toBe(3);
});

test('beside bits that clear it is the whole depth', () => {
  expect(depthAlong(BARS, cutShape([parseBit('flat:1mm')], 3), 3)([0, 12], [40, 12])).toBe(3);
});

test('a hole in the pocket bounds the stroke beside it', () => {
  const ring = region([0, 0, 40, 0, 40, 40, 0, 40], [2, 2, 2, 38, 38, 38, 38, 2]);
  const along = depthAlong(ring, cutShape([parseBit('vee:60deg:1/2in')], 5), 5);
  expect(along([0, 0], [40, 0])).toBeCloseTo(Math.sqrt(3), 6);
});

/** Radius of the largest disc that touches a point from the side of a normal and has none of an outline within it, by halving: discs lie in larger ones. */
function largestDisc([x, y]: Point, [nx, ny]: Point, cut: CleanRegion): number {
  let [low, high] = [0, 1000];
  for (let halving = 0; halving < 60; halving++) {
    const r = (low + high) / 2;
    const isClear = distanceTo(cut, [x + r * nx, y + r * ny]) >= r * (1 - 1e-9);
    [low, high] = isClear ? [r, high] : [low, r];
  }
  return low;
}

function distanceTo(cut: CleanRegion, [x, y]: Point): number {
  const each = edgesOf(cut).map(([[ax, ay], [bx, by]]) => {
    const [dx, dy] = [bx - ax, by - ay];
    const share = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(ax + share * dx - x, ay + share * dy - y);
  });
  return Math.min(...each);
}

function edgesOf(cut: CleanRegion): readonly (readonly [Point, Point])[] {
  return Array.from(cut.ringEnds, (_, k) => Array.from(ringCoords(cut, k))).flatMap((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i): readonly [Point, Point] => {
      const at = (k: number): Point => [
        ring[k % ring.length] as number,
        ring[(k + 1) % ring.length] as number,
      ];
      return [at(2 * i), at(2 * i + 2)];
    }),
  );
}

test('beside each edge it is that of the largest disc within the cut that touches it, be it small or large', () => {
  // a comb of ever wider gaps in a large square with a hole
  const teeth = [0.05, 0.3, 0.9, 2, 5, 11].flatMap((gap, k) => [
    40 * k,
    30 + k,
    40 * k + 40 - gap,
    30 - 2 * k,
    40 * k + 40 - gap,
    0,
    40 * k + 40,
    0,
  ]);
  const cut = region([0, 300, 0, 0, ...teeth, 240, 300], [50, 100, 60, 180, 190, 200, 150, 90]);
  const shape: CutShape = {
    ...cutShape([parseBit('vee:60deg:1/2in')], 3),
    sectionAt: (widthMm) => ({
      widthMm,
      depthMm: widthMm / 2,
      cutter: veeCutter({ includedRad: 1, diameterMm: 1 }),
    }),
  };
  const along = depthAlong(cut, shape, 50);
  for (const [from, to] of edgesOf(cut)) {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const length = Math.hypot(dx, dy);
    const radii = [0.02, 0.25, 0.5, 0.75, 0.98].map((share) =>
      largestDisc([from[0] + share * dx, from[1] + share * dy], [-dy / length, dx / length], cut),
    );
    expect(along(from, to)).toBeCloseTo(Math.min(50, Math.max(...radii)), 4);
  }
});
