import { radians } from '@pourproof/plane';
import { distinctRings, sameOutlineMm } from '../chains/distinct-rings.ts';
import { joinChains } from '../chains/join-chains.ts';
import { openOutlines } from '../chains/open-outlines.ts';
import { flattenFitSpline } from '../flatten/fit-spline.ts';
import { flattenEllipseArc } from '../flatten/flatten-ellipse-arc.ts';
import { flattenNurbs, nurbsFault } from '../flatten/flatten-nurbs.ts';
import { appendArc, appendPoint } from './append-bulge.ts';
import { turnFrom } from './draw-curves.ts';
import { flattenPolyline } from './draw-polyline.ts';
import { type DxfMap, type PlaneMap, planeAt } from './dxf-map.ts';
import type { DxfPen } from './dxf-pen.ts';
import { type DxfRecord, numberOf } from './dxf-record.ts';
import { type HatchEdge, type HatchLoop, hatchLoops } from './hatch-loops.ts';

const EXTERNAL = 1;
const TEXT_BOX = 8;
const OUTERMOST = 16;

/**
 * Draws a HATCH as the area within its boundary: islands by even-odd in the normal style, only the outermost
 * ring in the outer style, everything within the external loops in the ignoring style. A line pattern is
 * taken as a full area, with a notice.
 */
export function drawHatch(record: DxfRecord, map: DxfMap, pen: DxfPen, joinToleranceMm: number): void {
  const plane = planeAt(map, numberOf(record, 30, 0));
  const style = numberOf(record, 75, 0);
  const rings: (readonly number[])[] = [];
  let isBroken = false;
  for (const loop of usedLoops(hatchLoops(record), style)) {
    const found = loopRings(loop, plane, pen, joinToleranceMm);
    rings.push(...found.rings);
    isBroken ||= found.isOpen;
  }
  if (isBroken || rings.length === 0) {
    pen.notice('broken-hatch');
  }
  if (rings.length === 0) {
    return;
  }
  if (numberOf(record, 70, 1) === 0) {
    pen.notice('hatch-pattern');
  }
  // a boundary that is stored twice must not cancel itself
  pen.area(distinctRings(rings, sameOutlineMm(joinToleranceMm)).rings, 'evenodd');
}

function usedLoops(loops: readonly HatchLoop[], style: number): readonly HatchLoop[] {
  const shapes = loops.filter((loop) => (loop.flags & TEXT_BOX) === 0);
  const wanted = style === 1 ? EXTERNAL | OUTERMOST : style === 2 ? EXTERNAL : 0;
  const marked = shapes.filter((loop) => (loop.flags & wanted) !== 0);
  return wanted === 0 || marked.length === 0 ? shapes : marked;
}

/** Usually one ring, more where the edges of one loop make several; and whether some edges bound what no ring does. */
function loopRings(
  loop: HatchLoop,
  plane: PlaneMap,
  pen: DxfPen,
  joinToleranceMm: number,
): { readonly rings: (readonly number[])[]; readonly isOpen: boolean } {
  if (loop.vertices.length > 0) {
    const vertices = loop.vertices.map(([x, y, bulge]) => ({ x, y, bulge, startWidth: 0, endWidth: 0 }));
    return { rings: [flattenPolyline(vertices, true, plane, pen.toleranceMm)], isOpen: false };
  }
  const pieces: { coords: readonly number[] }[] = [];
  for (const edge of loop.edges) {
    const coords = edgeCoords(edge, plane, pen);
    if (coords.length >= 4 && coords.every(Number.isFinite)) {
      pieces.push({ coords });
    }
  }
  const joined = joinChains(pieces, joinToleranceMm);
  const rings: (readonly number[])[] = joined.rings.map((ring) => ring.coords);
  // a tail on a boundary that closes bounds nothing and is no part of it
  const isOpen =
    joined.open.length > 0 &&
    (rings.length === 0 || openOutlines(pieces, joined, joinToleranceMm, true).length > 0);
  if (isOpen) {
    pen.brokenLoop(pieces);
  }
  return { rings, isOpen };
}

/** The way along one edge in mm, its start included. */
function edgeCoords({ kind, data }: HatchEdge, plane: PlaneMap, pen: DxfPen): number[] {
  const out: number[] = [];
  if (kind === 1) {
    appendPoint(out, plane, numberOf(data, 10, Number.NaN), numberOf(data, 20, Number.NaN));
    appendPoint(out, plane, numberOf(data, 11, Number.NaN), numberOf(data, 21, Number.NaN));
  } else if (kind === 2) {
    appendCircleEdge(out, data, plane, pen.toleranceMm);
  } else if (kind === 3) {
    appendEllipseEdge(out, data, plane, pen.toleranceMm);
  } else if (kind === 4) {
    appendSplineEdge(out, data, plane, pen);
  }
  return out;
}

/** Angles of a clockwise edge are counted clockwise from the x axis (code 73 is 0). */
function edgeTurn(data: DxfRecord, toParameter: (angle: number) => number): [start: number, end: number] {
  const from = toParameter(radians(numberOf(data, 50, 0)));
  const sweep = turnFrom(from, toParameter(radians(numberOf(data, 51, 360))));
  return numberOf(data, 73, 1) === 0 ? [-from, -(from + sweep)] : [from, from + sweep];
}

function appendCircleEdge(out: number[], data: DxfRecord, plane: PlaneMap, toleranceMm: number): void {
  const [cx, cy, r] = [numberOf(data, 10, 0), numberOf(data, 20, 0), Math.abs(numberOf(data, 40, 0))];
  const [start, end] = edgeTurn(data, (angle) => angle);
  appendPoint(out, plane, cx + r * Math.cos(start), cy + r * Math.sin(start));
  appendArc(out, plane, cx, cy, r, start, end, toleranceMm);
}

/**
 * Angles of an ellipse edge are those of the end points as seen from the centre, from the major axis; not
 * parameters.
 */
function appendEllipseEdge(out: number[], data: DxfRecord, plane: PlaneMap, toleranceMm: number): void {
  const [x, y] = [numberOf(data, 10, 0), numberOf(data, 20, 0)];
  const [mx, my] = [numberOf(data, 11, 0), numberOf(data, 21, 0)];
  const ratio = numberOf(data, 40, 1);
  const [start, end] = edgeTurn(data, (angle) => Math.atan2(Math.sin(angle) / ratio, Math.cos(angle)));
  const arc = {
    cx: plane.ox + plane.xx * x + plane.yx * y,
    cy: plane.oy + plane.xy * x + plane.yy * y,
    ux: plane.xx * mx + plane.yx * my,
    uy: plane.xy * mx + plane.yy * my,
    vx: ratio * (plane.yx * mx - plane.xx * my),
    vy: ratio * (plane.yy * mx - plane.xy * my),
    start,
    end,
  };
  const [c, s] = [Math.cos(start), Math.sin(start)];
  out.push(arc.cx + c * arc.ux + s * arc.vx, arc.cy + c * arc.uy + s * arc.vy);
  flattenEllipseArc(out, arc, toleranceMm);
}

function appendSplineEdge(out: number[], data: DxfRecord, plane: PlaneMap, pen: DxfPen): void {
  const spline = {
    degree: numberOf(data, 94, 3),
    knots: valuesOf(data, 40),
    points: pointsOf(data, plane, 10),
    weights: numberOf(data, 73, 0) === 0 ? [] : valuesOf(data, 42),
  };
  const fitPoints = pointsOf(data, plane, 11);
  if (nurbsFault(spline) === '' && spline.points.every(Number.isFinite)) {
    flattenNurbs(out, spline, pen.toleranceMm);
  } else if (fitPoints.length >= 4 && fitPoints.every(Number.isFinite)) {
    flattenFitSpline(out, fitPoints, false, [undefined, undefined], pen.toleranceMm);
    pen.notice('spline-through-points');
  } else {
    pen.notice('broken-spline', nurbsFault(spline));
  }
}

function valuesOf(data: DxfRecord, code: number): number[] {
  return data.values.filter((_, i) => data.codes[i] === code) as number[];
}

function pointsOf(data: DxfRecord, plane: PlaneMap, code: number): number[] {
  const out: number[] = [];
  data.codes.forEach((c, i) => {
    if (c === code) {
      const y = data.codes[i + 1] === code + 10 ? (data.values[i + 1] as number) : Number.NaN;
      appendPoint(out, plane, data.values[i] as number, y);
    }
  });
  return out;
}
