import { type CutterPath, followingPath } from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import { type CleanRegion, rotation, scaling, transformRings } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { pathLength } from '../support/oracles/path-length.ts';
import { veeDepth } from '../support/oracles/vee-depth.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';
import { boundaryDistance, pathShapes } from '../support/shapes/path-shapes.ts';

const RIGHT = Math.PI / 2;

const point = (path: CutterPath, i: number): [number, number, number] => [
  path.points[3 * i]!,
  path.points[3 * i + 1]!,
  path.points[3 * i + 2]!,
];

/** Length of the distinct moves of a path of straight moves, each counted once. */
function onceMm(path: CutterPath): number {
  const seen = new Map<string, number>();
  const key = (p: readonly number[]): string => p.map((v) => v.toFixed(6)).join(',');
  for (let k = 0; k < path.runEnds.length; k++) {
    for (let i = k === 0 ? 0 : path.runEnds[k - 1]!; i + 1 < path.runEnds[k]!; i++) {
      const [a, b] = [point(path, i), point(path, i + 1)];
      seen.set([key(a), key(b)].sort().join(' '), Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]));
    }
  }
  return [...seen.values()].reduce((sum, length) => sum + length, 0);
}

test('a rectangle is followed along its ridge and up into its four corners', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const found = followingPath(axis, { includedRad: RIGHT, depthMm: Infinity });
  // 10 mm of ridge, and from each of its ends twice the diagonal of a 5 mm cube: at 90° the depth is the
  // clearance
  const diagonal = 5 * Math.sqrt(3);
  expect(onceMm(found.path)).toBeCloseTo(10 + 4 * diagonal, 9);
  // one run: two of the corners are its ends or walked back from, and two more are walked there and back
  expect(found.path.runEnds.length).toBe(1);
  expect(found.lengthMm).toBeCloseTo(10 + 6 * diagonal, 9);
  expect(found.retracedMm).toBeCloseTo(2 * diagonal, 9);
});

test('at a depth limit the tip goes around where the limit is reached and from there into the corners', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const found = followingPath(axis, { includedRad: Math.PI / 3, depthMm: 3 });
  const inset = 3 * Math.tan(Math.PI / 6);
  const around = 2 * (20 - 2 * inset + 10 - 2 * inset);
  expect(onceMm(found.path)).toBeCloseTo(around + 4 * Math.hypot(inset, inset, 3), 9);
  expect(found.path.points.filter((_, i) => i % 3 === 2).every((depth) => depth <= 3)).toBe(true);
});

test('a flattened circle is one plunge at its centre, or one offset loop at a depth limit', () => {
  const axis = medialAxis(cleanFrom([regular(400, 5, 3, 2)]));
  const deep = followingPath(axis, { includedRad: RIGHT, depthMm: Infinity });
  expect([...deep.path.runEnds]).toEqual([1]);
  const [x, y, depth] = point(deep.path, 0);
  expect(Math.hypot(x - 3, y - 2)).toBeLessThan(1e-9);
  expect(depth).toBeCloseTo(5 * Math.cos(Math.PI / 400), 9);
  const level = followingPath(axis, { includedRad: RIGHT, depthMm: 2 });
  // a regular polygon whose inscribed circle is 2 mm less
  expect(level.lengthMm).toBeCloseTo(800 * Math.tan(Math.PI / 400) * (5 * Math.cos(Math.PI / 400) - 2), 9);
  expect(level.path.runEnds.length).toBe(1);
});

test('the path along the parabola between a wall and a vertex has its true length', () => {
  // a wall along y = 0 and the point (0, 2), where two walls meet that fall 58 on 40: the tip's height is
  // that of y = (x² + h²)/2h
  const h = 2;
  const wedge = cleanFrom([[-40, 0, 40, 0, 40, 60, 0, h, -40, 60]]);
  const tan = Math.tan(Math.PI / 6);
  const cut = { includedRad: Math.PI / 3, depthMm: Infinity, toleranceMm: 1e-8 };
  // it ends where the line to the vertex is at right angles to those walls
  const u = h * Math.tan(Math.atan2(58, 40) / 2);
  const k = Math.sqrt(1 + 1 / tan ** 2) / h;
  const half = (u / 2) * Math.hypot(1, k * u) + Math.asinh(k * u) / (2 * k);
  expect(Math.abs(lengthWithin(followingPath(medialAxis(wedge), cut).path, u) - 2 * half)).toBeLessThan(1e-6);
});

test('the path along the hyperbola between two vertices has its true length', () => {
  const h = 1.5;
  const waist = cleanFrom([[-30, -30, 0, -h, 30, -30, 30, 30, 0, h, -30, 30]]);
  const tan = Math.tan(0.4);
  const cut = { includedRad: 0.8, depthMm: Infinity, toleranceMm: 1e-8 };
  // from the waist to where the line to a vertex is at right angles to the walls beside it, 28.5 down on 30
  // across
  const u = (h * 28.5) / 30;
  const steps = 100000;
  let half = 0;
  for (let k = 0; k < steps; k++) {
    const x = ((k + 0.5) * u) / steps;
    half += (Math.hypot(1, x / Math.hypot(x, h) / tan) * u) / steps;
  }
  expect(Math.abs(lengthWithin(followingPath(medialAxis(waist), cut).path, u) - 2 * half)).toBeLessThan(1e-6);
});

/** Length of the moves that lie within |x| ≤ u. */
function lengthWithin(path: CutterPath, u: number): number {
  let sum = 0;
  for (let i = 0; i + 1 < path.bulges.length; i++) {
    const [a, b] = [point(path, i), point(path, i + 1)];
    if (Math.max(Math.abs(a[0]), Math.abs(b[0])) < u * (1 + 1e-9)) {
      sum += Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    }
  }
  return sum;
}

test('a rounded tip is less deep by the missing apex of its cone, and rises along its own circle in corners', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const rho = 0.8;
  const half = Math.PI / 6;
  const found = followingPath(axis, {
    includedRad: 2 * half,
    tipRadiusMm: rho,
    depthMm: Infinity,
    toleranceMm: 1e-7,
  });
  const deepest = Math.max(...found.path.points.filter((_, i) => i % 3 === 2));
  expect(deepest).toBeCloseTo(5 / Math.tan(half) - (rho / Math.sin(half) - rho), 9);
  // along a 90° corner 1 mm of clearance takes √2 mm of path; r = ρ sin t on the circle, from 0 to a quarter
  // less half the angle
  const steps = 200000;
  let arc = 0;
  for (let k = 0; k < steps; k++) {
    const t = ((k + 0.5) * (Math.PI / 2 - half)) / steps;
    arc += (rho * Math.hypot(Math.SQRT2 * Math.cos(t), Math.sin(t)) * (Math.PI / 2 - half)) / steps;
  }
  const cone = (5 - rho * Math.cos(half)) * Math.hypot(Math.SQRT2, 1 / Math.tan(half));
  expect(found.lengthMm - found.retracedMm).toBeCloseTo(10 + 4 * (arc + cone), 7);
});

test('a rounded tip that a depth limit stops on its ball goes no farther than where its circle at the face is that wide', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const [rho, depthMm] = [2, 0.5];
  const tip = { includedRad: Math.PI / 3, tipRadiusMm: rho, depthMm, toleranceMm: 1e-7 };
  const found = followingPath(axis, tip);
  // half the chord of a cap of that height
  const inset = Math.sqrt(depthMm * (2 * rho - depthMm));
  const around = 2 * (20 - 2 * inset + 10 - 2 * inset);
  // r = ρ sin t on the circle, 1 mm of clearance takes √2 mm of path
  const [steps, end] = [20000, Math.asin(inset / rho)];
  let arc = 0;
  for (let k = 0; k < steps; k++) {
    const t = ((k + 0.5) * end) / steps;
    arc += (rho * Math.hypot(Math.SQRT2 * Math.cos(t), Math.sin(t)) * end) / steps;
  }
  expect(found.lengthMm - found.retracedMm).toBeCloseTo(around + 4 * arc, 6);
  expect(onceMm(found.path)).toBeCloseTo(around + 4 * arc, 6);
});

test('a flat tip stops where it no longer fits, and is less deep by the missing apex of its cone', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const found = followingPath(axis, { includedRad: Math.PI / 3, tipFlatMm: 1, depthMm: Infinity });
  const deepest = (5 - 0.5) / Math.tan(Math.PI / 6);
  expect(Math.max(...found.path.points.filter((_, i) => i % 3 === 2))).toBeCloseTo(deepest, 9);
  // 0.5 mm from both walls of each corner to the ridge's end 5 mm from them
  expect(onceMm(found.path)).toBeCloseTo(10 + 4 * Math.hypot(4.5, 4.5, deepest), 9);
  expect(found.lengthMm - found.retracedMm).toBeCloseTo(onceMm(found.path), 9);
  expect(followingPath(axis, { includedRad: 1, tipFlatMm: 10.1, depthMm: 4 }).path.runEnds.length).toBe(0);
});

describe.each(pathShapes)('following the %s', (_, region) => {
  const axis = medialAxis(region);
  const widest = axis.nodeR.reduce((a, b) => Math.max(a, b), 0);

  test.each([Infinity, 0.5])('goes just as deep as the walls allow, at a limit of %d', (share) => {
    const cut = { includedRad: 1.1, depthMm: (share * widest) / Math.tan(0.55) };
    const { path } = followingPath(axis, { ...cut, ignoreMm: 0, toleranceMm: 1e-4 });
    const count = path.bulges.length;
    expect(count).toBeGreaterThan(0);
    for (let i = 0; i < count; i += Math.ceil(count / 300)) {
      const [x, y, depth] = point(path, i);
      const allowed = veeDepth(boundaryDistance(region, x, y), cut);
      expect(Math.abs(depth - allowed)).toBeLessThan(1e-8 * widest);
    }
  });

  test('leaves no part of the edge farther from every disc of the tip than may be ignored', () => {
    const ignoreMm = 0.02;
    const { path } = followingPath(axis, {
      includedRad: 1.1,
      depthMm: Infinity,
      ignoreMm,
      toleranceMm: 1e-4,
    });
    const T = Math.tan(0.55);
    const { coords } = region;
    for (let i = 0; i < coords.length; i += 2) {
      let beyond = Infinity;
      for (let j = 0; j < path.bulges.length; j++) {
        const [x, y, depth] = point(path, j);
        beyond = Math.min(beyond, Math.hypot(x - coords[i]!, y - coords[i + 1]!) - depth * T);
      }
      expect(beyond).toBeLessThan(ignoreMm + reflexSlack);
    }
  });

  test.each(['tipRadiusMm', 'tipFlatMm'])(
    'has the length to which that of its chords tends, with a %s',
    (tip) => {
      const options = { includedRad: 1.1, [tip]: 0.1 * widest, depthMm: 0.7 * widest, ignoreMm: 0 };
      const found = followingPath(axis, options);
      const fine = followingPath(axis, { ...options, toleranceMm: 1e-8 * widest });
      expect(fine.lengthMm).toBe(found.lengthMm);
      // chords within 1e-8 of the width are shorter by no more than about that share of their number of bends
      expect(Math.abs(pathLength(fine.path) - found.lengthMm)).toBeLessThan(1e-6 * found.lengthMm);
    },
  );

  test('has a length that grows with the size and stays the same when turned', () => {
    const options = { includedRad: 1.1, depthMm: 0.6 * widest, ignoreMm: 0, retraceMm: 0 };
    const { lengthMm, retracedMm } = followingPath(axis, options);
    const larger = transformRings(scaling(7), region) as CleanRegion;
    const big = followingPath(medialAxis(larger), { ...options, depthMm: 7 * options.depthMm });
    expect(big.lengthMm - big.retracedMm).toBeCloseTo(7 * (lengthMm - retracedMm), 6);
    const turned = followingPath(medialAxis(transformRings(rotation(0.7), region) as CleanRegion), options);
    expect(turned.lengthMm - turned.retracedMm).toBeCloseTo(lengthMm - retracedMm, 6);
  });

  test('takes no more retracts than there are ends too far apart to walk back between', () => {
    const few = followingPath(axis, { includedRad: 1.1, depthMm: Infinity, retraceMm: Infinity });
    const many = followingPath(axis, { includedRad: 1.1, depthMm: Infinity, retraceMm: 0 });
    expect(few.path.runEnds.length).toBeLessThanOrEqual(many.path.runEnds.length);
    expect(many.retracedMm).toBe(0);
    expect(few.lengthMm).toBeLessThanOrEqual(2 * many.lengthMm);
  });
});

/**
 * Points of the edge that are touched between two points of the path are a little farther from both than from
 * the curve.
 */
const reflexSlack = 0.01;

test('a stroke with eight long teeth is one run where walking back is cheap, several where it is not', () => {
  const comb = [0, 0];
  for (let k = 0; k < 8; k++) {
    comb.push(10 * k, -30, 10 * k + 2, -30, 10 * k + 2, 0);
    if (k < 7) {
      comb.push(10 * k + 10, 0);
    }
  }
  comb.push(72, 2, 0, 2);
  const axis = medialAxis(cleanFrom([comb]));
  const one = followingPath(axis, { includedRad: RIGHT, depthMm: Infinity, retraceMm: 100 });
  const many = followingPath(axis, { includedRad: RIGHT, depthMm: Infinity, retraceMm: 20 });
  expect(one.path.runEnds.length).toBe(1);
  expect(many.path.runEnds.length).toBeGreaterThan(3);
  expect(many.lengthMm).toBeLessThan(one.lengthMm);
});

test('sizes out of range are refused', () => {
  const axis = medialAxis(cleanFrom([rectangle(0, 0, 20, 10)]));
  const good = { includedRad: 1, depthMm: 2 };
  for (const bad of [
    { includedRad: 0 },
    { includedRad: 4 },
    { depthMm: 0 },
    { tipRadiusMm: -1 },
    { tipFlatMm: 1, tipRadiusMm: 1 },
    { toleranceMm: 0 },
    { ignoreMm: -1 },
    { retraceMm: -1 },
  ]) {
    const [name] = Object.keys(bad);
    expect(() => followingPath(axis, { ...good, ...bad })).toThrow(RangeError);
    expect(() => followingPath(axis, { ...good, ...bad })).toThrow(`${name} is `);
  }
});
