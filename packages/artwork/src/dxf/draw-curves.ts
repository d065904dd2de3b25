import { radians } from '@pourproof/plane';
import { flattenEllipseArc } from '../flatten/flatten-ellipse-arc.ts';
import { appendArc, appendPoint } from './append-bulge.ts';
import { type DxfMap, mapPoint, planeAt } from './dxf-map.ts';
import type { DxfPen } from './dxf-pen.ts';
import { type DxfRecord, numberOf } from './dxf-record.ts';

const FULL_TURN = 2 * Math.PI;

/**
 * Directions nearer than this, in radians, are one: a dozen digits of 2π leave 1e-11. Shorter arcs than this
 * cannot be drawn.
 */
const ANGLE_TOLERANCE = 1e-10;

/** Draws a LINE, given in world coordinates. */
export function drawLine(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
  const from = mapPoint(map, numberOf(record, 10, 0), numberOf(record, 20, 0), numberOf(record, 30, 0));
  const to = mapPoint(map, numberOf(record, 11, 0), numberOf(record, 21, 0), numberOf(record, 31, 0));
  pen.chain([...from, ...to]);
}

/** Draws a CIRCLE, given in its object plane. */
export function drawCircle(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
  const radius = Math.abs(numberOf(record, 40, 0));
  if (radius === 0) {
    pen.notice('zero-size');
    return;
  }
  const plane = planeAt(map, numberOf(record, 30, 0));
  const out: number[] = [];
  appendArc(
    out,
    plane,
    numberOf(record, 10, 0),
    numberOf(record, 20, 0),
    radius,
    0,
    FULL_TURN,
    pen.toleranceMm,
  );
  pen.ring(out);
}

/**
 * Draws an ARC, given in its object plane; from start to end counter-clockwise, a full turn when both are the
 * same direction.
 */
export function drawArc(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
  const radius = Math.abs(numberOf(record, 40, 0));
  const start = radians(numberOf(record, 50, 0));
  const sweep = turnFrom(start, radians(numberOf(record, 51, 360)));
  if (radius === 0) {
    pen.notice('zero-size');
    return;
  }
  const plane = planeAt(map, numberOf(record, 30, 0));
  const cx = numberOf(record, 10, 0);
  const cy = numberOf(record, 20, 0);
  const out: number[] = [];
  if (sweep === FULL_TURN) {
    appendArc(out, plane, cx, cy, radius, start, start + FULL_TURN, pen.toleranceMm);
    pen.ring(out);
    return;
  }
  appendPoint(out, plane, cx + radius * Math.cos(start), cy + radius * Math.sin(start));
  appendArc(out, plane, cx, cy, radius, start, start + sweep, pen.toleranceMm);
  pen.chain(out);
}

/**
 * Draws an ELLIPSE, given in world coordinates: centre, major half-axis, ratio of the axes and the parameters
 * of its ends.
 */
export function drawEllipse(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
  const [mx, my, mz] = [numberOf(record, 11, 0), numberOf(record, 21, 0), numberOf(record, 31, 0)];
  const ratio = numberOf(record, 40, 1);
  const [nx, ny, nz] = unitNormal(record);
  const start = numberOf(record, 41, 0);
  const sweep = turnFrom(start, numberOf(record, 42, FULL_TURN));
  if ((mx === 0 && my === 0 && mz === 0) || ratio === 0) {
    pen.notice('zero-size');
    return;
  }
  const [cx, cy] = mapPoint(map, numberOf(record, 10, 0), numberOf(record, 20, 0), numberOf(record, 30, 0));
  const [ox, oy] = mapPoint(map, 0, 0, 0);
  const [ux, uy] = mapPoint(map, mx, my, mz);
  // the minor half-axis is normal × major, shortened by the ratio
  const [vx, vy] = mapPoint(
    map,
    ratio * (ny * mz - nz * my),
    ratio * (nz * mx - nx * mz),
    ratio * (nx * my - ny * mx),
  );
  const arc = { cx, cy, ux: ux - ox, uy: uy - oy, vx: vx - ox, vy: vy - oy, start, end: start + sweep };
  const full = sweep === FULL_TURN;
  const out: number[] = full
    ? []
    : [
        cx + arc.ux * Math.cos(start) + arc.vx * Math.sin(start),
        cy + arc.uy * Math.cos(start) + arc.vy * Math.sin(start),
      ];
  flattenEllipseArc(out, arc, pen.toleranceMm);
  if (full) {
    pen.ring(out);
  } else {
    pen.chain(out);
  }
}

/**
 * The counter-clockwise turn from one direction to another, above 0 and at most a full turn; equal directions
 * are a full turn.
 */
export function turnFrom(start: number, end: number): number {
  const rest = (end - start) % FULL_TURN;
  const turn = rest < 0 ? rest + FULL_TURN : rest;
  return turn < ANGLE_TOLERANCE || turn > FULL_TURN - ANGLE_TOLERANCE ? FULL_TURN : turn;
}

function unitNormal(record: DxfRecord): [number, number, number] {
  const n: [number, number, number] = [
    numberOf(record, 210, 0),
    numberOf(record, 220, 0),
    numberOf(record, 230, 1),
  ];
  const length = Math.hypot(...n);
  return length > 0 ? [n[0] / length, n[1] / length, n[2] / length] : [0, 0, 1];
}
