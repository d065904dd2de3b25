import { appendPoint } from './append-bulge.ts';
import { type DxfMap, planeAt } from './dxf-map.ts';
import type { DxfPen } from './dxf-pen.ts';
import { type DxfRecord, hasCode, numberOf } from './dxf-record.ts';

/**
 * Draws a SOLID or TRACE. Its corners go in the order 1, 2, 4, 3 around the shape (DXF reference, SOLID);
 * where the sides cross in that order the two triangles of the bow tie are filled, as the entity says. A
 * missing fourth corner, or one equal to the third, makes a triangle.
 */
export function drawSolid(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
  const plane = planeAt(map, numberOf(record, 30, 0));
  const order = hasCode(record, 13) ? [0, 1, 3, 2] : [0, 1, 2];
  const coords: number[] = [];
  for (const corner of order) {
    appendPoint(coords, plane, numberOf(record, 10 + corner, 0), numberOf(record, 20 + corner, 0));
  }
  if (order.length === 4 && sidesCross(coords)) {
    pen.notice('crossed-solid');
    pen.area([coords], 'evenodd');
    return;
  }
  pen.patch(coords);
}

/** Whether two opposite sides of a quadrilateral cross. */
function sidesCross(q: readonly number[]): boolean {
  const turn = (i: number, j: number, k: number): number =>
    ((q[2 * j] as number) - (q[2 * i] as number)) * ((q[2 * k + 1] as number) - (q[2 * i + 1] as number)) -
    ((q[2 * j + 1] as number) - (q[2 * i + 1] as number)) * ((q[2 * k] as number) - (q[2 * i] as number));
  const cross = (a: number, b: number, c: number, d: number): boolean =>
    turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
  return cross(0, 1, 2, 3) || cross(1, 2, 3, 0);
}
