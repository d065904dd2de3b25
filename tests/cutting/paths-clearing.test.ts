import { type CutterPath, clearingPath, reachedOutline } from '@pourproof/cutting';
import { type ArcRings, medialAxis, openedArea, polygonFromArcs } from '@pourproof/geometry';
import { type CleanRegion, packRings, perimeter, rotation, scaling, transformRings } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { floatSweptArea } from '../support/oracles/float-offsets.ts';
import { pathLength } from '../support/oracles/path-length.ts';
import { runsOf } from '../support/runs-of.ts';
import { cleanFrom, rectangle } from '../support/shapes/clean-from.ts';
import { boundaryDistance, pathShapes } from '../support/shapes/path-shapes.ts';

const ARC_MM = 1e-3;

describe.each(pathShapes)('clearing the %s', (_, region) => {
  const axis = medialAxis(region);
  const widest = axis.nodeR.reduce((a, b) => Math.max(a, b), 0);
  const nothing = packRings([]);

  test.each([
    [0.17, 0.5],
    [0.5, 0.45],
    [0.95, 0.3],
    [0.25, 0.7],
    [0.2, 0.95],
    [0.4, 1],
  ])('with a radius of %d of the widest clearance sweeps just what the cutter can reach', (share, step) => {
    const r = share * widest;
    const path = clearingPath(axis, { diameterMm: 2 * r, stepoverMm: 2 * r * step, depthMm: 3 });
    const area = floatSweptArea(runsOf(path, ARC_MM / 10), r, ARC_MM, nothing);
    // the engine's arcs are chords: it loses a part of their tolerance along the edge of what is swept
    expect(Math.abs(area - openedArea(axis, r))).toBeLessThan(ARC_MM * (2 * perimeter(region) + 1));
  });

  test.each([
    [0.5, 0.2],
    [0.9, 0.15],
    [1.1, 0.3],
  ])('after a cutter of %d of the widest clearance takes just what that one left', (earlier, share) => {
    const r = share * widest;
    const before = earlier * widest;
    const path = clearingPath(axis, {
      diameterMm: 2 * r,
      stepoverMm: r,
      depthMm: 3,
      earlierDiameterMm: 2 * before,
      ignoreMm: 0,
      overlapMm: 0.1 * r,
    });
    const done = polygonFromArcs(reachedOutline(axis, before, before), ARC_MM / 10);
    const area = floatSweptArea(runsOf(path, ARC_MM / 10), r, ARC_MM, done);
    expect(Math.abs(area - openedArea(axis, r))).toBeLessThan(ARC_MM * (3 * perimeter(region) + 1));
  });

  test('never brings the centre nearer to the edge than the radius, not even on links', () => {
    for (const earlier of [0, 1.2 * widest, 0.7 * widest]) {
      const r = 0.2 * widest;
      const path = clearingPath(axis, {
        diameterMm: 2 * r,
        stepoverMm: 0.8 * r,
        depthMm: 1,
        earlierDiameterMm: earlier,
      });
      for (const run of runsOf(path, 1e-8)) {
        for (let i = 0; i + 3 < run.length; i += 2 * Math.ceil(run.length / 200)) {
          for (const t of [0, 0.5]) {
            const d = boundaryDistance(
              region,
              run[i]! + t * (run[i + 2]! - run[i]!),
              run[i + 1]! + t * (run[i + 3]! - run[i + 1]!),
            );
            expect(d).toBeGreaterThan(r - 1e-6);
          }
        }
      }
    }
  });

  test('is no longer than its offset loops and two links there and back for each, none longer than two stepovers', () => {
    const options = { diameterMm: 0.3 * widest, stepoverMm: 0.15 * widest, depthMm: 0 };
    let loops = 0;
    let count = 0;
    for (let level = options.diameterMm / 2; level <= widest; level += options.stepoverMm) {
      const { coords, bulges, ringEnds } = reachedOutline(axis, level, 0);
      count += ringEnds.length;
      for (const run of ringsOf({ coords, bulges, ringEnds })) {
        loops += run;
      }
    }
    const length = pathLength(clearingPath(axis, options));
    expect(length).toBeGreaterThan(loops - 1e-9);
    expect(length - loops).toBeLessThanOrEqual(2 * count * 2 * options.stepoverMm);
  });

  test('has a length that grows with the size and hardly changes when turned', () => {
    const options = { diameterMm: 0.3 * widest, stepoverMm: 0.13 * widest, depthMm: 0 };
    const length = pathLength(clearingPath(axis, options));
    const larger = transformRings(scaling(7), region) as CleanRegion;
    const big = { diameterMm: 7 * options.diameterMm, stepoverMm: 7 * options.stepoverMm, depthMm: 0 };
    expect(pathLength(clearingPath(medialAxis(larger), big))).toBeCloseTo(7 * length, 6);
    const turned = transformRings(rotation(0.7), region) as CleanRegion;
    // where clearances tie save for rounding, links are elsewhere; each is at most two steps long
    const slack = 4 * options.stepoverMm;
    expect(Math.abs(pathLength(clearingPath(medialAxis(turned), options)) - length)).toBeLessThan(slack);
  });
});

/** Length of each ring, its arcs by their angle. */
function ringsOf({ coords, bulges, ringEnds }: ArcRings): number[] {
  return Array.from(ringEnds, (to, k) => {
    const from = k === 0 ? 0 : ringEnds[k - 1]!;
    let sum = 0;
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      const chord = Math.hypot(coords[2 * j]! - coords[2 * i]!, coords[2 * j + 1]! - coords[2 * i + 1]!);
      const half = 2 * Math.atan(Math.abs(bulges[i]!));
      sum += half === 0 ? chord : (chord * half) / Math.sin(half);
    }
    return sum;
  });
}

test('a rectangle is cleared in one closed run of nested rectangles and the links between them', () => {
  const path = clearingPath(medialAxis(cleanFrom([rectangle(0, 0, 20, 10)])), {
    diameterMm: 3,
    stepoverMm: 1.2,
    depthMm: 2,
  });
  expect(path.runEnds.length).toBe(1);
  // rings 17 × 7, 14.6 × 4.6, 12.2 × 2.2 and two links of 1.2 mm there and back
  expect(pathLength(path)).toBeCloseTo(48 + 38.4 + 28.8 + 4.8, 9);
  expect(path.points[2]).toBe(2);
});

describe('after a wider cutter', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const rest = { diameterMm: 1, stepoverMm: 0.4, depthMm: 2, earlierDiameterMm: 3, overlapMm: 0.1 };

  test('only the four corners of a rectangle are left, one run each where the cutter retracts', () => {
    const path = clearingPath(axis, { ...rest, stayDownMm: 0 });
    expect(path.runEnds.length).toBe(4);
    // R − r along each wall and 0.1 mm in and out
    expect(pathLength(path)).toBeCloseTo(4 * (2 * 1 + 0.2), 9);
  });

  test('they are one run where it stays down and moves from corner to corner only once, at full depth', () => {
    const path = clearingPath(axis, { ...rest, deepestPassMm: 0.5 });
    expect(path.runEnds.length).toBe(1);
    const ways = movesBetween(path, 6.9);
    // along the walls between the discs of the wider cutter, 17 or 7 mm
    expect(ways.map(({ length }) => Math.round(length)).sort((p, q) => p - q)).toEqual([7, 7, 17]);
    expect(ways.every(({ depths }) => depths.every((depth) => depth === 2))).toBe(true);
  });
});

/** Straight moves of at least a length. */
function movesBetween(path: CutterPath, least: number): { length: number; depths: number[] }[] {
  const found: { length: number; depths: number[] }[] = [];
  for (let i = 0; i + 1 < path.bulges.length; i++) {
    const [ax, ay, az, bx, by, bz] = path.points.slice(3 * i, 3 * i + 6) as unknown as number[];
    const length = Math.hypot(bx! - ax!, by! - ay!);
    if (length >= least) {
      found.push({ length, depths: [az!, bz!] });
    }
  }
  return found;
}

describe.each(pathShapes)('staying down in the %s', (_, region) => {
  const axis = medialAxis(region);
  const widest = axis.nodeR.reduce((a, b) => Math.max(a, b), 0);

  test('moves only over what the earlier cutter has cut, and saves retracts', () => {
    const before = 0.5 * widest;
    const r = 0.2 * widest;
    const rest = { diameterMm: 2 * r, stepoverMm: r, depthMm: 1, earlierDiameterMm: 2 * before };
    const lifted = clearingPath(axis, { ...rest, stayDownMm: 0 });
    const joined = clearingPath(axis, { ...rest, stayDownMm: 4 * widest });
    expect(joined.runEnds.length).toBeLessThanOrEqual(lifted.runEnds.length);
    const key = (path: CutterPath, i: number): string => path.points.slice(3 * i, 3 * i + 6).join();
    const cutting = new Set(Array.from({ length: lifted.bulges.length }, (__, i) => key(lifted, i)));
    const done = polygonFromArcs(reachedOutline(axis, before, before), 1e-6 * widest) as CleanRegion;
    for (let k = 0; k < joined.runEnds.length; k++) {
      for (let i = k === 0 ? 0 : joined.runEnds[k - 1]!; i + 1 < joined.runEnds[k]!; i++) {
        if (!cutting.has(key(joined, i))) {
          const [ax, ay, , bx, by] = joined.points.slice(3 * i, 3 * i + 6) as unknown as number[];
          for (const t of [0, 0.25, 0.5, 0.75, 1]) {
            const d = boundaryDistance(done, ax! + t * (bx! - ax!), ay! + t * (by! - ay!));
            expect(d).toBeGreaterThan(r - 1e-5 * widest);
          }
        }
      }
    }
  });
});

test('an annulus takes one run, a dumbbell whose waist is too narrow two, a cutter that fits nowhere none', () => {
  const [, annulus] = pathShapes.find(([name]) => name === 'annulus')!;
  const one = clearingPath(medialAxis(annulus), { diameterMm: 1, stepoverMm: 0.5, depthMm: 1 });
  expect(one.runEnds.length).toBe(1);
  const dumbbell = cleanFrom([
    [0, 0, 8, 0, 8, 3, 12, 3, 12, 0, 20, 0, 20, 8, 12, 8, 12, 5, 8, 5, 8, 8, 0, 8],
  ]);
  const axis = medialAxis(dumbbell);
  expect(clearingPath(axis, { diameterMm: 3, stepoverMm: 1, depthMm: 1 }).runEnds.length).toBe(2);
  expect(clearingPath(axis, { diameterMm: 1, stepoverMm: 0.5, depthMm: 1 }).runEnds.length).toBe(1);
  expect(clearingPath(axis, { diameterMm: 9, stepoverMm: 1, depthMm: 1 }).runEnds.length).toBe(0);
});

test('sizes out of range are refused', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const good = { diameterMm: 2, stepoverMm: 1, depthMm: 1 };
  for (const bad of [
    { diameterMm: 0 },
    { stepoverMm: 2.01 },
    { stepoverMm: 0 },
    { depthMm: -1 },
    { overlapMm: Number.NaN },
    { stayDownMm: -1 },
    { deepestPassMm: 0 },
  ]) {
    expect(() => clearingPath(axis, { ...good, ...bad })).toThrow(RangeError);
  }
});
