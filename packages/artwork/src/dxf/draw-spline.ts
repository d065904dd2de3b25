import { flattenFitSpline } from '../flatten/fit-spline.ts';
import { flattenNurbs, type Nurbs, nurbsFault } from '../flatten/flatten-nurbs.ts';
import { MAX_COORD_MM } from '../max-coord.ts';
import { type DxfMap, mapPoint } from './dxf-map.ts';
import type { DxfPen } from './dxf-pen.ts';
import { type DxfRecord, hasFlag, numberOf } from './dxf-record.ts';

/**
 * Draws a SPLINE, given in world coordinates: by its control points, or through its fit points when it has no
 * sound control points. A spline of which neither can be used is left out with a notice.
 */
export function drawSpline(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
  const fitPoints = pointsOf(record, map, 11);
  const points = pointsOf(record, map, 10);
  const spline: Nurbs = {
    degree: numberOf(record, 71, 3),
    knots: valuesOf(record, 40),
    points,
    weights: valuesOf(record, 41),
  };
  const fault = nurbsFault(spline);
  // the points of a curve this large would fill the memory before the pen could refuse them
  if ([...points, ...fitPoints].some((c) => Math.abs(c) > MAX_COORD_MM)) {
    pen.notice('bad-number');
    return;
  }
  const out: number[] = [];
  if (fault === '' && points.every(Number.isFinite)) {
    flattenNurbs(out, spline, pen.toleranceMm);
  } else if (fitPoints.length >= 4 && fitPoints.every(Number.isFinite)) {
    const tangents = [directionOf(record, map, 12), directionOf(record, map, 13)] as const;
    flattenFitSpline(out, fitPoints, hasFlag(record, 1), tangents, pen.toleranceMm);
    pen.notice('spline-through-points');
  } else {
    pen.notice('broken-spline', fault === '' ? 'numbers that cannot be read' : fault);
    return;
  }
  pen.chain(out);
}

function valuesOf(record: DxfRecord, code: number): number[] {
  return record.values.filter((_, i) => record.codes[i] === code) as number[];
}

/** Points under a code and the two that follow by tens, as they land on the drawing. */
function pointsOf(record: DxfRecord, map: DxfMap, code: number): number[] {
  const out: number[] = [];
  record.codes.forEach((c, i) => {
    if (c === code) {
      const y = record.codes[i + 1] === code + 10 ? (record.values[i + 1] as number) : Number.NaN;
      const z = record.codes[i + 2] === code + 20 ? (record.values[i + 2] as number) : 0;
      out.push(...mapPoint(map, record.values[i] as number, y, z));
    }
  });
  return out;
}

function directionOf(record: DxfRecord, map: DxfMap, code: number): readonly [number, number] | undefined {
  const [x, y, z] = [
    numberOf(record, code, 0),
    numberOf(record, code + 10, 0),
    numberOf(record, code + 20, 0),
  ];
  const [ox, oy] = mapPoint(map, 0, 0, 0);
  const [px, py] = mapPoint(map, x, y, z);
  return px === ox && py === oy ? undefined : [px - ox, py - oy];
}
