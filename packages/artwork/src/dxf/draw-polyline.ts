import { appendBulge, appendPoint } from './append-bulge.ts';
import { drawWidePolyline } from './draw-wide-polyline.ts';
import { type DxfMap, mapPoint, type PlaneMap, planeAt } from './dxf-map.ts';
import type { DxfPen } from './dxf-pen.ts';
import { type DxfRecord, hasFlag, numberOf } from './dxf-record.ts';

/** A vertex of a flat polyline in drawing units; bulge and widths belong to the way to the next vertex. */
export interface PolylineVertex {
  readonly x: number;
  readonly y: number;
  bulge: number;
  startWidth: number;
  endWidth: number;
}

/** Draws an LWPOLYLINE; vertices are taken as they stand, whatever count the entity claims. */
export function drawLwpolyline(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
  const width = numberOf(record, 43, 0);
  const vertices: PolylineVertex[] = [];
  record.codes.forEach((code, i) => {
    const value = record.values[i] as number;
    const last = vertices.at(-1);
    if (code === 10) {
      const y = record.codes[i + 1] === 20 ? (record.values[i + 1] as number) : Number.NaN;
      vertices.push({ x: value, y, bulge: 0, startWidth: width, endWidth: width });
    } else if (code === 40 && last) {
      last.startWidth = value;
    } else if (code === 41 && last) {
      last.endWidth = value;
    } else if (code === 42 && last) {
      last.bulge = value;
    }
  });
  drawFlatPolyline(vertices, hasFlag(record, 1), planeAt(map, numberOf(record, 38, 0)), pen);
}

/**
 * Draws a POLYLINE: flat ones in their object plane, 3-D ones as seen from above. Of a spline-fit polyline
 * the curve's points are taken and its control points left out; the extra vertices of a curve-fit one carry
 * their own bulges.
 */
export function drawPolyline(record: DxfRecord, objectMap: DxfMap, worldMap: DxfMap, pen: DxfPen): void {
  if (hasFlag(record, 16) || hasFlag(record, 64)) {
    pen.notice('entity-not-taken', 'POLYLINE mesh');
    return;
  }
  const closed = hasFlag(record, 1);
  const points = record.parts.filter((vertex) => !hasFlag(vertex, 16));
  if (hasFlag(record, 8)) {
    const coords = points.flatMap((v) =>
      mapPoint(worldMap, numberOf(v, 10, 0), numberOf(v, 20, 0), numberOf(v, 30, 0)),
    );
    finish(coords, closed, pen);
    return;
  }
  const startWidth = numberOf(record, 40, 0);
  const endWidth = numberOf(record, 41, 0);
  const vertices = points.map((v) => ({
    x: numberOf(v, 10, 0),
    y: numberOf(v, 20, 0),
    bulge: numberOf(v, 42, 0),
    startWidth: numberOf(v, 40, startWidth),
    endWidth: numberOf(v, 41, endWidth),
  }));
  drawFlatPolyline(vertices, closed, planeAt(objectMap, numberOf(record, 30, 0)), pen);
}

/** Draws a polyline with bulges: as a filled band if it has a width, else as an outline or a chain. */
function drawFlatPolyline(
  vertices: readonly PolylineVertex[],
  closed: boolean,
  plane: PlaneMap,
  pen: DxfPen,
): void {
  if (!vertices.every(isComputable)) {
    pen.notice('bad-number');
    return;
  }
  if (vertices.some((v) => v.startWidth > 0 || v.endWidth > 0)) {
    drawWidePolyline(vertices, closed, plane, pen);
    return;
  }
  finish(flattenPolyline(vertices, closed, plane, pen.toleranceMm), closed, pen);
}

/** Bands are built from these numbers by products in which what is no number, or overflows, could vanish. */
function isComputable({ x, y, bulge, startWidth, endWidth }: PolylineVertex): boolean {
  return [x, y, bulge * bulge, startWidth * startWidth, endWidth * endWidth].every(Number.isFinite);
}

/** The way along the vertices in mm; back to the first vertex when closed. */
export function flattenPolyline(
  vertices: readonly PolylineVertex[],
  closed: boolean,
  plane: PlaneMap,
  toleranceMm: number,
): number[] {
  const out: number[] = [];
  const first = vertices[0];
  if (first === undefined) {
    return out;
  }
  appendPoint(out, plane, first.x, first.y);
  let from = first;
  for (const to of closed ? [...vertices.slice(1), first] : vertices.slice(1)) {
    appendBulge(out, plane, from.x, from.y, to.x, to.y, from.bulge, toleranceMm);
    from = to;
  }
  return out;
}

function finish(coords: readonly number[], closed: boolean, pen: DxfPen): void {
  if (coords.length < 4) {
    pen.notice('zero-size');
  } else if (closed) {
    pen.ring(coords);
  } else {
    pen.chain(coords);
  }
}
