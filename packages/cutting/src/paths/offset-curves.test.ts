import { resolveRegions } from '@pourproof/arrangement';
import { arcRingsArea, erodedArea, type MedialAxis, medialAxis, packArcRings } from '@pourproof/geometry';
import { type CleanRegion, packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { reachedOutline } from '../slices/reached-outline.ts';
import { type OffsetCurve, OffsetTracer } from './offset-curves.ts';

function offsetCurves(axis: MedialAxis, radiusMm: number): OffsetCurve[] {
  const all = Int32Array.from(axis.edgeFrom, (_, e) => e);
  return new OffsetTracer(axis, Infinity).trace(radiusMm, all, 0);
}

function rectangle(width: number, height: number): CleanRegion {
  return packRings([[0, 0, width, 0, width, height, 0, height]]) as CleanRegion;
}

test('closed offset curves enclose the eroded area, and are as many as the rings of the outline', () => {
  const along = fc.integer({ min: 0, max: 400 }).map((k) => k / 100);
  const points = fc.array(fc.tuple(along, along), { minLength: 3, maxLength: 14 });
  fc.assert(
    fc.property(points, fc.double({ min: 0.02, max: 0.95, noNaN: true }), (corners, share) => {
      const coords = Float64Array.from(corners.flat());
      const ringEnds = Uint32Array.of(corners.length);
      const { region } = resolveRegions([{ coords, ringEnds, fillRule: 'evenodd' }]);
      fc.pre(region.ringEnds.length > 0);
      const axis = medialAxis(region);
      const radiusMm = share * axis.nodeR.reduce((most, r) => Math.max(most, r), 0);
      const curves = offsetCurves(axis, radiusMm);
      const area = arcRingsArea(packArcRings(curves.map(({ points: own }) => own)));
      expect(Math.abs(area - erodedArea(axis, radiusMm))).toBeLessThan(1e-7);
      expect(curves.every(({ startEdge, endEdge }) => startEdge === -1 && endEdge === -1)).toBe(true);
      expect(curves.length).toBe(reachedOutline(axis, radiusMm, 0).ringEnds.length);
    }),
    cases(150),
  );
});

test('a slot as wide as the cutter keeps a line there and back, a square of that size one point', () => {
  const [slot, ...others] = offsetCurves(medialAxis(rectangle(10, 4)), 2);
  expect(others).toEqual([]);
  expect(slot?.points.length).toBe(6);
  const [dot] = offsetCurves(medialAxis(rectangle(4, 4)), 2);
  expect(dot?.points.length).toBe(3);
});
