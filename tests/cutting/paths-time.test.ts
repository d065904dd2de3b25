import {
  type CutterPath,
  clearingPath,
  cutterEfforts,
  cuttingTime,
  equalPasses,
  followingPath,
  inPasses,
  SMALL_ROUTER,
} from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../support/lane.ts';
import { pathLength } from '../support/oracles/path-length.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';
import { pathShapes } from '../support/shapes/path-shapes.ts';

/** One run through points `[x, y, depth]`. */
function line(...points: readonly (readonly number[])[]): CutterPath {
  return {
    points: Float64Array.from(points.flat()),
    bulges: new Float64Array(points.length),
    runEnds: Uint32Array.of(points.length),
  };
}

/** 60 mm/s along, 6 mm/s down, 120 mm/s above, 100 mm/s². */
const machine = {
  feedMmPerMin: 3600,
  plungeMmPerMin: 360,
  rapidMmPerMin: 7200,
  accelerationMmPerS2: 100,
  junctionDeviationMm: 0.02,
  retractMm: 5,
};
const cutSeconds = (path: CutterPath, given = {}): number =>
  60 * cuttingTime(path, { ...machine, ...given }).cutMinutes;

describe('a straight move from rest to rest', () => {
  test('that reaches the feed takes length / feed + feed / acceleration', () => {
    expect(cutSeconds(line([0, 0, 0], [100, 0, 0]))).toBeCloseTo(100 / 60 + 60 / 100, 12);
  });

  test('that is too short for the feed takes 2·√(length / acceleration)', () => {
    expect(cutSeconds(line([0, 0, 0], [9, 0, 0]))).toBeCloseTo(2 * Math.sqrt(9 / 100), 12);
  });

  test('takes the same when points along it are inserted or repeated', () => {
    const whole = cutSeconds(line([0, 0, 0], [100, 0, 0]));
    const parts = line([0, 0, 0], [1, 0, 0], [1, 0, 0], [40, 0, 0], [99.5, 0, 0], [100, 0, 0]);
    expect(cutSeconds(parts)).toBeCloseTo(whole, 9);
  });

  test('of no length takes no time', () => {
    expect(cutSeconds(line([3, 4, 1], [3, 4, 1]))).toBe(0);
    expect(cutSeconds(line([3, 4, 1]))).toBe(0);
  });
});

describe('corners', () => {
  test('are passed with full stops where the path turns back, or no deviation is allowed', () => {
    const one = cutSeconds(line([0, 0, 0], [100, 0, 0]));
    expect(cutSeconds(line([0, 0, 0], [100, 0, 0], [0, 0, 0]))).toBeCloseTo(2 * one, 9);
    const square = line([0, 0, 0], [100, 0, 0], [100, 100, 0], [0, 100, 0], [0, 0, 0]);
    expect(cutSeconds(square, { junctionDeviationMm: 0 })).toBeCloseTo(4 * one, 9);
  });

  test('of a square are passed at √(a·δ·sin 45° / (1 − sin 45°))', () => {
    const square = line([0, 0, 0], [100, 0, 0], [100, 100, 0], [0, 100, 0], [0, 0, 0]);
    const s = Math.SQRT1_2;
    const v = Math.sqrt((100 * 0.02 * s) / (1 - s));
    // a side from rest to the corner's speed, and one between two corners, each with its ramps
    const side = (v0: number, v1: number): number =>
      (60 - v0) / 100 + (60 - v1) / 100 + (100 - (2 * 3600 - v0 * v0 - v1 * v1) / 200) / 60;
    expect(cutSeconds(square)).toBeCloseTo(2 * side(0, v) + 2 * side(v, v), 9);
  });

  test('of a polygon with many sides are passed at about the speed that its circle allows', () => {
    const radius = 4;
    const ring = regular(720, radius);
    const points: number[][] = [];
    for (let turns = 0; turns < 20; turns++) {
      for (let i = 0; i < ring.length; i += 2) {
        points.push([ring[i]!, ring[i + 1]!, 0]);
      }
    }
    // corners this flat allow more than the feed by themselves, but their circle only √(a·ρ) = 20 mm/s
    const length = 20 * 720 * 2 * radius * Math.sin(Math.PI / 720);
    // moves are merged into chords, along which the speed may rise a little: 2·a·0.2 mm on 400 mm²/s²
    expect(cutSeconds(line(...points))).toBeGreaterThan((0.95 * length) / 20);
    expect(cutSeconds(line(...points))).toBeLessThan(length / 20 + 2 * (20 / 100));
  });
});

test('an arc is passed no faster than √(a·ρ)', () => {
  const half: CutterPath = {
    points: Float64Array.of(-4, 0, 0, 4, 0, 0),
    bulges: Float64Array.of(1, 0),
    runEnds: Uint32Array.of(2),
  };
  const length = 4 * Math.PI;
  const v = Math.min(Math.sqrt(100 * 4), Math.sqrt(100 * length));
  expect(cutSeconds(half)).toBeCloseTo(v / 100 + length / v, 9);
});

test('a slope down is held to the plunge speed, a slope up is not', () => {
  const down = cutSeconds(line([0, 0, 0], [30, 0, 40]));
  // 50 mm of path for 40 mm of depth at 6 mm/s: 7.5 mm/s along it
  expect(down).toBeCloseTo(50 / 7.5 + 7.5 / 100, 9);
  expect(cutSeconds(line([0, 0, 40], [30, 0, 0]))).toBeCloseTo(50 / 60 + 60 / 100, 9);
});

test('moves straight down within a run count as plunges', () => {
  const found = cuttingTime(line([0, 0, 1], [10, 0, 1], [10, 0, 3], [0, 0, 3]), machine);
  expect(found.plungeMm).toBe(5 + 1 + 2);
  expect(found.cutMm).toBe(20);
});

test('two runs cost two plunges, two retracts and one move between them', () => {
  const path: CutterPath = {
    points: Float64Array.of(0, 0, 2, 10, 0, 2, 40, 40, 3, 50, 40, 3),
    bulges: new Float64Array(4),
    runEnds: Uint32Array.of(2, 4),
  };
  const found = cuttingTime(path, machine);
  expect(found.retracts).toBe(2);
  expect(found.plungeMm).toBe(7 + 8);
  expect(60 * found.plungeMinutes).toBeCloseTo((7 + 8) / 6 + (2 * 6) / 100, 9);
  expect(found.rapidMm).toBe(7 + 8 + 50);
  const short = (mm: number): number => 2 * Math.sqrt(mm / 100);
  expect(60 * found.rapidMinutes).toBeCloseTo(short(7) + short(8) + short(50), 9);
  expect(found.minutes).toBeCloseTo(found.cutMinutes + found.plungeMinutes + found.rapidMinutes, 12);
});

test('no runs take no time, and assumptions are listed with their origin', () => {
  const nothing = { points: new Float64Array(0), bulges: new Float64Array(0), runEnds: new Uint32Array(0) };
  const found = cuttingTime(nothing, { feedMmPerMin: 1500 });
  expect(found.minutes).toBe(0);
  expect(found.assumptions).toContainEqual({
    name: 'feedMmPerMin',
    value: 1500,
    unit: 'mm/min',
    origin: 'given',
  });
  expect(found.assumptions).toContainEqual({
    name: 'accelerationMmPerS2',
    value: SMALL_ROUTER.accelerationMmPerS2,
    unit: 'mm/s²',
    origin: 'common practice',
  });
  expect(found.assumptions.length).toBe(6);
});

test('values of a machine out of range are refused', () => {
  const path = line([0, 0, 0], [1, 0, 0]);
  for (const bad of [
    { feedMmPerMin: 0 },
    { plungeMmPerMin: -1 },
    { accelerationMmPerS2: Number.NaN },
    { retractMm: -1 },
  ]) {
    expect(() => cuttingTime(path, bad)).toThrow(RangeError);
  }
});

test('no path is faster than its feed, and more acceleration never takes longer', () => {
  const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
  fc.assert(
    fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 30 }), (points) => {
      const path = line(...points.map(([x, y]) => [x, y, 2]));
      const slow = cutSeconds(path);
      const quick = cutSeconds(path, { accelerationMmPerS2: 400 });
      expect(slow).toBeGreaterThanOrEqual(pathLength(path) / 60 - 1e-9);
      expect(quick).toBeLessThanOrEqual(slow + 1e-9);
      // nor slower than with a stop at every point
      const stops = points.slice(1).reduce((sum, _, i) => {
        return sum + cutSeconds(line([...points[i]!, 2], [...points[i + 1]!, 2]));
      }, 0);
      expect(slow).toBeLessThanOrEqual(stops + 1e-9);
    }),
  );
});

test('a plan equals a simulation in small steps, forwards and backwards under the speed limit', () => {
  const point = fc.tuple(
    fc.integer({ min: -20, max: 20 }),
    fc.integer({ min: -20, max: 20 }),
    fc.integer({ min: 0, max: 6 }),
  );
  fc.assert(
    fc.property(fc.array(point, { minLength: 2, maxLength: 8 }), (drawn) => {
      // moves of no length, or straight down, are counted elsewhere
      const points = drawn.filter(
        (p, i) => i === 0 || p[0] !== drawn[i - 1]![0] || p[1] !== drawn[i - 1]![1],
      );
      fc.pre(points.length > 1 && points.every((p, i) => i === 0 || isApart(p, points[i - 1]!)));
      const seconds = 60 * cuttingTime(line(...points), machine).cutMinutes;
      // 2000 steps to a move: the first and last of each ramp are taken too coarsely
      expect(Math.abs(seconds - simulated(points))).toBeLessThan(0.01 * seconds);
    }),
    cases(60),
  );
});

const isApart = (p: readonly number[], q: readonly number[]): boolean => p[0] !== q[0] || p[1] !== q[1];

/**
 * Seconds along a polyline in small steps: limits at every step, then what acceleration lets through both
 * ways.
 */
function simulated(points: readonly (readonly [number, number, number])[]): number {
  const a = machine.accelerationMmPerS2;
  const limit: number[] = [0];
  const step: number[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const d = points[i + 1]!.map((v, k) => v - points[i]![k]!);
    const length = Math.hypot(...d);
    const speed = Math.min(60, d[2]! > 0 ? (6 * length) / d[2]! : Infinity);
    const count = 2000;
    for (let k = 1; k <= count; k++) {
      step.push(length / count);
      limit.push(speed);
    }
    const before = i > 0 ? points[i]!.map((v, k) => v - points[i - 1]![k]!) : undefined;
    if (before !== undefined) {
      const dot = d.reduce((sum, v, k) => sum + v * before[k]!, 0) / length / Math.hypot(...before);
      const cos = Math.min(1, Math.max(-1, dot));
      // half the angle between both moves, from the cosine of the turn
      const sin = Math.sqrt(Math.max(0, (1 + cos) / 2));
      const radius = Math.min(
        (0.02 * sin) / (1 - sin),
        (length + Math.hypot(...before)) / 2 / Math.acos(cos),
      );
      const at = limit.length - 1 - count;
      limit[at] = Math.min(limit[at]!, speed, Math.sqrt(a * radius));
    }
  }
  limit[limit.length - 1] = 0;
  const v = limit.slice();
  for (let i = 1; i < v.length; i++) {
    v[i] = Math.min(v[i]!, Math.sqrt(v[i - 1]! ** 2 + 2 * a * step[i - 1]!));
  }
  for (let i = v.length - 2; i >= 0; i--) {
    v[i] = Math.min(v[i]!, Math.sqrt(v[i + 1]! ** 2 + 2 * a * step[i]!));
  }
  return step.reduce((sum, s, i) => sum + (2 * s) / (v[i]! + v[i + 1]!), 0);
}

describe('passes', () => {
  test('are equal, and as many as the deepest allowed pass asks for', () => {
    expect(equalPasses(6, 2)).toEqual([2, 4, 6]);
    expect(equalPasses(6.1, 2).length).toBe(4);
    // 0.3 / 0.1 is a little below 3, 0.7 / 0.1 a little below 7, 0.6 / 0.2 a little above 3: none may add a
    // pass
    expect([0.3, 0.7].map((d) => equalPasses(d, 0.1).length)).toEqual([3, 7]);
    expect(equalPasses(0.6, 0.2).length).toBe(3);
    expect(equalPasses(0, 2)).toEqual([]);
    expect(() => equalPasses(1, 0)).toThrow(RangeError);
    expect(() => equalPasses(-1, 1)).toThrow(RangeError);
  });

  test('of a clearing repeat it at each depth, without retracts where a run closes', () => {
    const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
    const once = clearingPath(axis, { diameterMm: 3, stepoverMm: 1.2, depthMm: 6 });
    const thrice = inPasses(once, equalPasses(6, 2));
    expect(thrice.runEnds.length).toBe(once.runEnds.length);
    expect(pathLength(thrice)).toBeCloseTo(3 * pathLength(once) + 4, 9);
    expect(new Set(thrice.points.filter((_, i) => i % 3 === 2))).toEqual(new Set([2, 4, 6]));
  });

  test('of open runs go back and forth', () => {
    const path = inPasses(line([0, 0, 3], [10, 0, 3], [10, 5, 3]), [1, 2, 3]);
    expect(path.runEnds.length).toBe(1);
    expect([...path.points.slice(9, 21)]).toEqual([10, 5, 2, 10, 0, 2, 0, 0, 2, 0, 0, 3]);
  });

  test('of a V cut are level where it is deeper, and the last one is the cut itself', () => {
    const path = inPasses(line([0, 0, 0], [4, 0, 4], [10, 0, 4], [14, 0, 0]), [2, 4]);
    expect(path.runEnds.length).toBe(2);
    expect([...path.points.slice(0, 12)]).toEqual([2, 0, 2, 4, 0, 2, 10, 0, 2, 12, 0, 2]);
    expect([...path.points.slice(12)]).toEqual([0, 0, 0, 4, 0, 4, 10, 0, 4, 14, 0, 0]);
  });

  test.each(pathShapes)('of a V cut in the %s never take more than a pass allows', (_, region) => {
    const axis = medialAxis(region);
    const { path } = followingPath(axis, { includedRad: 1, depthMm: 4 });
    const deepest = Math.max(...path.points.filter((__, i) => i % 3 === 2));
    const depths = equalPasses(deepest, deepest / 3.5);
    const passes = inPasses(path, depths);
    // wherever the cut leads below the second depth, some move of the second pass was there before
    const [, second] = depths;
    const deep = lengthBelow(path, second!);
    expect(lengthAt(passes, second!) - deep).toBeLessThan(1e-6 * (1 + deep) + lengthAt(path, second!));
    expect(deep - lengthAt(passes, second!)).toBeLessThan(1e-6 * (1 + deep));
  });
});

/** Length in plan of the parts of a path of straight moves below a depth. */
function lengthBelow(path: CutterPath, depth: number): number {
  return overMoves(path, (flat, z0, z1) => {
    const high = Math.max(z0, z1);
    const low = Math.min(z0, z1);
    return high <= depth ? 0 : low >= depth ? flat : (flat * (high - depth)) / (high - low);
  });
}

/** Length in plan of the level moves at a depth. */
function lengthAt(path: CutterPath, depth: number): number {
  return overMoves(path, (flat, z0, z1) => (z0 === depth && z1 === depth ? flat : 0));
}

function overMoves(path: CutterPath, measure: (flat: number, z0: number, z1: number) => number): number {
  let sum = 0;
  for (let k = 0; k < path.runEnds.length; k++) {
    for (let i = k === 0 ? 0 : path.runEnds[k - 1]!; i + 1 < path.runEnds[k]!; i++) {
      const [x0, y0, z0, x1, y1, z1] = path.points.slice(3 * i, 3 * i + 6) as unknown as number[];
      const chord = Math.hypot(x1! - x0!, y1! - y0!);
      const b = Math.abs(path.bulges[i]!);
      sum += measure(b === 0 ? chord : (chord * (1 + b * b) * Math.atan(b)) / b, z0!, z1!);
    }
  }
  return sum;
}

describe('the effort of each cutter', () => {
  const room = cleanFrom([rectangle(0, 0, 40, 20)], [rectangle(18, 8, 4, 4)]);
  const axis = medialAxis(room);
  const diameters = [6, 2, 4, 1];
  const tasks = diameters.map((widthMm) => ({ way: 'clear', widthMm, depthMm: 5 }) as const);
  const efforts = cutterEfforts({ clear: axis, follow: axis }, tasks);

  test('is nothing for a wider bit after a narrower one', () => {
    expect(efforts[2]).toMatchObject({ pathMm: 0, passes: 0, minutes: 0 });
  });

  test('costs passes of half a diameter and time for all of them', () => {
    expect(efforts.map((effort) => effort.passes)).toEqual([2, 5, 0, 10]);
    for (const effort of efforts) {
      expect(effort.minutes).toBeGreaterThanOrEqual(effort.pathMm / SMALL_ROUTER.feedMmPerMin);
    }
    const path = clearingPath(axis, { diameterMm: 6, stepoverMm: 2.4, depthMm: 5 });
    expect(efforts[0]!.pathMm).toBeCloseTo(2 * pathLength(path), 6);
  });

  test('takes its stepover from the width of the tip, and passes as deep as given', () => {
    const [slender, asked] = cutterEfforts({ clear: axis, follow: axis }, [
      { way: 'clear', widthMm: 6, tipMm: 1, depthMm: 5 },
      { way: 'clear', widthMm: 3, stepoverShare: 0.25, deepestPassMm: 5, depthMm: 5 },
    ]);
    const loops = clearingPath(axis, { diameterMm: 6, stepoverMm: 0.4, depthMm: 5, deepestPassMm: 3 });
    expect(slender).toMatchObject({ passes: 2, pathMm: cuttingTime(loops).cutMm });
    const corners = clearingPath(axis, {
      diameterMm: 3,
      stepoverMm: 0.75,
      depthMm: 5,
      earlierDiameterMm: 6,
      deepestPassMm: 5,
    });
    expect(asked).toMatchObject({ passes: 1, pathMm: cuttingTime(corners).cutMm });
  });

  test('clears all of the floor below a shorter one, and above it only what that one left', () => {
    const clearing = { diameterMm: 2, stepoverMm: 0.8, deepestPassMm: 1 };
    const above = clearingPath(axis, { ...clearing, depthMm: 2, earlierDiameterMm: 6 });
    const below = clearingPath(axis, { ...clearing, openDepthMm: 2, depthMm: 5 });
    const depths = [...below.points].filter((_, i) => i % 3 === 2);
    expect([...new Set(depths)].sort()).toEqual([3, 4, 5]);
    const once = clearingPath(axis, { diameterMm: 2, stepoverMm: 0.8, depthMm: 5 });
    expect(pathLength(below)).toBeCloseTo(3 * pathLength(once) + below.runEnds.length * 2, 6);
    const [, long, none] = cutterEfforts({ clear: axis, follow: axis }, [
      { way: 'clear', widthMm: 6, depthMm: 2 },
      { way: 'clear', widthMm: 2, depthMm: 5 },
      { way: 'clear', widthMm: 4, depthMm: 5 },
    ]);
    expect(long).toMatchObject({ passes: 2 + 3 });
    expect(long!.pathMm).toBeCloseTo(cuttingTime(above).cutMm + cuttingTime(below).cutMm, 6);
    expect(none).toMatchObject({ pathMm: 0, passes: 0 });
  });

  test('of a V is its path along the axis, in passes where that is deep; it takes nothing from those that clear', () => {
    const vee = { includedRad: Math.PI / 3, depthMm: 3 };
    const [first, between, last] = cutterEfforts({ clear: axis, follow: axis }, [
      { way: 'clear', widthMm: 6, depthMm: 5 },
      { way: 'follow', diameterMm: 4, ...vee },
      { way: 'clear', widthMm: 2, depthMm: 5 },
    ]);
    const path = inPasses(followingPath(axis, vee).path, equalPasses(3, 2));
    expect(between).toMatchObject({ passes: 2, pathMm: cuttingTime(path).cutMm });
    expect([first, last]).toEqual([efforts[0], efforts[1]]);
  });
});
