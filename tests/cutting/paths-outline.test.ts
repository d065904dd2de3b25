import { reachedOutline } from '@pourproof/cutting';
import { arcRingsArea, erodedArea, medialAxis, polygonFromArcs } from '@pourproof/geometry';
import { type CleanRegion, perimeter, ringArea, ringCoords, signedArea } from '@pourproof/plane';
import ClipperLib from 'clipper-lib';
import { describe, expect, test } from 'vitest';
import { floatOffsetArea } from '../support/oracles/float-offsets.ts';
import { cleanFrom, rectangle } from '../support/shapes/clean-from.ts';
import { annulus, boundaryDistance, pathShapes } from '../support/shapes/path-shapes.ts';

describe.each(pathShapes)('where the centre may go in the %s', (_, region) => {
  const axis = medialAxis(region);
  const widest = axis.nodeR.reduce((a, b) => Math.max(a, b), 0);

  test('has an outline whose area by Green is the eroded area', () => {
    for (const share of [0.05, 0.2, 0.5, 0.8, 0.97]) {
      const r = share * widest;
      const apart = arcRingsArea(reachedOutline(axis, r, 0)) - erodedArea(axis, r);
      // a radius counts as up to a 1e-9 share less where it ties with a clearance
      expect(Math.abs(apart)).toBeLessThan(1e-9 * (signedArea(region) + r * perimeter(region)));
    }
  });

  test('has an outline whose points, on arcs too, are as far from the edge as the radius', () => {
    for (const share of [0.1, 0.45, 0.9]) {
      const r = share * widest;
      const fine = polygonFromArcs(reachedOutline(axis, r, 0), 1e-7 * widest);
      for (let i = 0; i < fine.coords.length; i += 2 * Math.ceil(fine.coords.length / 400)) {
        const d = boundaryDistance(region, fine.coords[i]!, fine.coords[i + 1]!);
        expect(Math.abs(d - r)).toBeLessThan(1e-9 * widest);
      }
    }
  });

  test('is empty just above the widest clearance and the artwork itself at radius 0', () => {
    // radii within 1e-9 of the widest clearance count as equal to it
    expect(reachedOutline(axis, widest * (1 + 3e-9), 0).ringEnds.length).toBe(0);
    expect(arcRingsArea(reachedOutline(axis, 0, 0))).toBeCloseTo(signedArea(region), 9);
  });

  test('agrees with the inward offsets of two other engines', () => {
    const r = 0.4 * widest;
    const arcMm = 1e-4;
    const ours = erodedArea(axis, r);
    // inward offsets are no longer than the artwork's edge plus a turn at each reflex vertex; the engines'
    // arcs are chords
    const bound = arcMm * (perimeter(region) + region.coords.length * r);
    expect(Math.abs(ours - integerOffset(region, r, arcMm))).toBeLessThan(bound);
    expect(Math.abs(ours - floatOffsetArea(region, -r, arcMm))).toBeLessThan(bound);
  });
});

function integerOffset(region: CleanRegion, radius: number, arcMm: number): number {
  const steps = 50 / arcMm;
  const engine = new ClipperLib.ClipperOffset(2, arcMm * steps);
  const paths = Array.from(region.ringEnds, (_, k) => {
    const ring = ringCoords(region, k);
    return Array.from({ length: ring.length / 2 }, (__, i) => ({
      X: Math.round(ring[2 * i]! * steps),
      Y: Math.round(ring[2 * i + 1]! * steps),
    }));
  });
  engine.AddPaths(paths, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
  const out: typeof paths = [];
  engine.Execute(out, -radius * steps);
  return out.reduce((sum, path) => sum + ClipperLib.Clipper.Area(path), 0) / steps ** 2;
}

test('a slot as wide as the cutter keeps a sliver around its centre line, a square of that size one point', () => {
  const slot = reachedOutline(medialAxis(cleanFrom([rectangle(0, 0, 10, 4)])), 2, 0);
  expect(slot.ringEnds.length).toBe(1);
  const { coords } = slot;
  expect(coords.filter((_, i) => i % 2 === 1).every((y) => Math.abs(y - 2) < 1e-8)).toBe(true);
  const along = coords.filter((_, i) => i % 2 === 0);
  expect(Math.min(...along)).toBeCloseTo(2, 8);
  expect(Math.max(...along)).toBeCloseTo(8, 8);
  const hole = reachedOutline(medialAxis(cleanFrom([rectangle(0, 0, 4, 4)])), 2, 0);
  expect(hole.coords.every((value) => Math.abs(value - 2) < 1e-8)).toBe(true);
});

test('a hole keeps its offset as a negative ring with one arc at each of its corners', () => {
  const rings = reachedOutline(medialAxis(annulus), 1.5, 0);
  expect(rings.ringEnds.length).toBe(2);
  const areas = [0, 1].map((k) => ringArea(ringCoords(rings, k))).sort((a, b) => a - b);
  expect(areas[0]).toBeLessThan(0);
  expect(rings.bulges.filter((b) => b < 0).length).toBe(17);
  expect(rings.bulges.filter((b) => b > 0).length).toBe(0);
});

test('a negative radius, or one that is no number, is refused', () => {
  expect(() => reachedOutline(medialAxis(annulus), -1, 0)).toThrow(RangeError);
  expect(() => reachedOutline(medialAxis(annulus), Number.NaN, 0)).toThrow(RangeError);
});
