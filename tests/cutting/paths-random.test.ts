import { clearingPath, followingPath, reachedOutline } from '@pourproof/cutting';
import { arcRingsArea, erodedArea, medialAxis, openedArea, polygonFromArcs } from '@pourproof/geometry';
import {
  type CleanRegion,
  packRings,
  perimeter,
  signedArea,
  transformRings,
  translation,
} from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gridCells, starRing, stars, untangled } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { floatSweptArea } from '../support/oracles/float-offsets.ts';
import { pathLength } from '../support/oracles/path-length.ts';
import { veeDepth } from '../support/oracles/vee-depth.ts';
import { runsOf } from '../support/runs-of.ts';
import { cleanFrom } from '../support/shapes/clean-from.ts';
import { boundaryDistance } from '../support/shapes/path-shapes.ts';

const ARC_MM = 3e-3;

/** A star with or without holes, a tangle undone, or grid cells; all some 10 mm wide. */
const regions = fc.oneof(
  stars([3, 37], [1, 10]),
  gridCells([1, 7], [0.4, 0.8]),
  untangled([3, 37]),
  fc
    .tuple(
      starRing([12, 30], [7, 10]),
      starRing([3, 7], [0.5, 2], [3, 2]),
      starRing([3, 9], [0.5, 2], [-3, -1]),
    )
    .map(([outer, ...holes]) => cleanFrom([outer], holes)),
);

const share = fc.double({ min: 0.15, max: 1, noNaN: true });
const options = cases(25);

test('two cutters in order sweep what the narrower one reaches, wherever loops, links and moves between runs lie', () => {
  fc.assert(
    fc.property(regions, share, share, share, (region, first, second, step) => {
      const axis = medialAxis(region);
      const before = first * axis.nodeR.reduce((a, b) => Math.max(a, b), 0);
      const r = 0.95 * second * before;
      const bound = 3 * ARC_MM * (perimeter(region) + 1);
      const clear = { diameterMm: 2 * before, stepoverMm: 2 * step * before, depthMm: 1 };
      const swept = floatSweptArea(
        runsOf(clearingPath(axis, clear), ARC_MM / 10),
        before,
        ARC_MM,
        packRings([]),
      );
      expect(Math.abs(swept - openedArea(axis, before))).toBeLessThan(bound);
      const rest = clearingPath(axis, {
        diameterMm: 2 * r,
        stepoverMm: 2 * step * r,
        depthMm: 1,
        earlierDiameterMm: 2 * before,
        ignoreMm: 0,
        stayDownMm: 30,
      });
      const done = polygonFromArcs(reachedOutline(axis, before, before), ARC_MM / 10);
      const both = floatSweptArea(runsOf(rest, ARC_MM / 10), r, ARC_MM, done);
      expect(Math.abs(both - openedArea(axis, r))).toBeLessThan(bound);
      const outline = arcRingsArea(reachedOutline(axis, r, 0));
      expect(Math.abs(outline - erodedArea(axis, r))).toBeLessThan(1e-9 * signedArea(region));
    }),
    options,
  );
});

test('a V goes just as deep as the walls allow, and its length is that of its ever finer chords', () => {
  fc.assert(
    fc.property(regions, share, share, (region, angle, depth) => {
      const axis = medialAxis(region);
      const cut = { includedRad: 2 * angle, depthMm: 8 * depth };
      const { path, lengthMm } = followingPath(axis, { ...cut, toleranceMm: 1e-6 });
      for (let i = 0; i < path.bulges.length; i += Math.ceil(path.bulges.length / 50)) {
        const distance = boundaryDistance(region, path.points[3 * i]!, path.points[3 * i + 1]!);
        expect(Math.abs(path.points[3 * i + 2]! - veeDepth(distance, cut))).toBeLessThan(1e-8);
      }
      expect(Math.abs(pathLength(path) - lengthMm)).toBeLessThan(1e-5 * lengthMm + 1e-9);
    }),
    options,
  );
});

test('artwork far from the origin has the same paths', () => {
  fc.assert(
    fc.property(regions, share, (region, size) => {
      const near = medialAxis(region);
      const far = medialAxis(transformRings(translation(1e5, -3e4), region) as CleanRegion);
      const r = size * near.nodeR.reduce((a, b) => Math.max(a, b), 0) * 0.999;
      const clear = { diameterMm: 2 * r, stepoverMm: r, depthMm: 1 };
      // coordinates of 1e5 mm are rounded to 1.5e-11 mm; a place or a link that just is or is not there may
      // change
      const slack = 1e-6 + 4 * r;
      const apart = pathLength(clearingPath(near, clear)) - pathLength(clearingPath(far, clear));
      expect(Math.abs(apart)).toBeLessThan(slack);
      const cut = { includedRad: 1, depthMm: Infinity, retraceMm: 0 };
      expect(followingPath(far, cut).lengthMm).toBeCloseTo(followingPath(near, cut).lengthMm, 5);
    }),
    options,
  );
});
