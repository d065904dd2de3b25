import type { Boundary } from '../medial-axis/boundary.ts';
import type { AxisGraph } from '../medial-axis/growing-graph.ts';
import {
  areaBesideLines,
  distanceBesideLines,
  distanceBesideParabola,
  distanceBesideVertices,
} from './cell-forms.ts';

/**
 * Sums over the cells beside some axis edges: area, mm²; length of the contacts on segments, mm; angle of the
 * contacts on vertices, radians; integral of the distance to the boundary, mm³; and the smallest and largest
 * clearance on those edges, mm.
 */
export type CellSums = Float64Array;

/** Positions in {@link CellSums}. */
export const AREA = 0;
export const LENGTH = 1;
export const TURN = 2;
export const VOLUME = 3;
export const MIN_CLEARANCE = 4;
export const MAX_CLEARANCE = 5;
export const SUM_STRIDE = 6;

/** The sums of no cells. */
export function noCells(): CellSums {
  return Float64Array.of(0, 0, 0, 0, Infinity, 0);
}

/**
 * Area of the cells less a strip of width `stripMm` along the boundary, mm²; all clearances are at least that
 * width.
 */
export function areaBeyondStrip(sums: CellSums, stripMm: number): number {
  return sums[AREA] - stripMm * (sums[LENGTH] + (stripMm / 2) * sums[TURN]);
}

/**
 * Integral of min(distance to the boundary, cap) over the cells, mm³; all clearances are at least the cap.
 */
export function cappedVolume(sums: CellSums, capMm: number): number {
  return capMm * (sums[AREA] - capMm * (sums[LENGTH] / 2 + (capMm / 6) * sums[TURN]));
}

/**
 * Adds to the sums at position `at` the cells beside edges `first` up to `end` (excluded) whose clearance is
 * at least `low` and less than `high` along their whole length. Where rounding makes a clearance fall along
 * an edge, the start counts against `low` and both ends against `high`.
 */
// biome-ignore lint/complexity/noExcessiveLinesPerFunction: an inner loop: one case for each pair of sites
export function addCells(
  boundary: Boundary,
  graph: AxisGraph,
  first: number,
  end: number,
  low: number,
  high: number,
  sums: CellSums,
  at: number,
): void {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, nodeR } = graph;
  const { count, x, y, tx, ty, next } = boundary;
  let area = 0;
  let length = 0;
  let turn = 0;
  let volume = 0;
  let least = Infinity;
  let greatest = 0;
  for (let e = first; e < end; e++) {
    const from = edgeFrom[e];
    const to = edgeTo[e];
    const a = nodeR[from];
    const b = nodeR[to];
    if (!(a >= low && a < high && b < high)) {
      continue;
    }
    const left = edgeLeft[e];
    const right = edgeRight[e];
    const vx = nodeX[to] - nodeX[from];
    const vy = nodeY[to] - nodeY[from];
    if (left < count && right < count) {
      // contacts run against the boundary on the left, along it on the right
      const along = vx * (tx[right] - tx[left]) + vy * (ty[right] - ty[left]);
      area += areaBesideLines(along, a, b);
      length += along;
      volume += distanceBesideLines(along, a, b);
    } else if (left < count || right < count) {
      const isForth = right < count;
      const line = isForth ? right : left;
      const p = (isForth ? left : right) - count;
      if (p === line || p === next[line]) {
        // secondary: no area beside it
        continue;
      }
      const sign = isForth ? 1 : -1;
      const px = nodeX[from] - x[p];
      const py = nodeY[from] - y[p];
      const h = (y[p] - y[line]) * tx[line] - (x[p] - x[line]) * ty[line];
      const s = (px * tx[line] + py * ty[line]) / h;
      const along = vx * tx[line] + vy * ty[line];
      const t = s + along / h;
      const cross = px * vy - py * vx;
      // both cells up to the chord: what the parabola takes from one it gives to the other
      area += (sign * (along * (a + b) + cross)) / 2;
      length += sign * along;
      turn += sign * Math.atan2(cross, px * (px + vx) + py * (py + vy));
      volume += sign * distanceBesideParabola(h, s, t);
    } else {
      const p = left - count;
      const q = right - count;
      const dx = x[q] - x[p];
      const dy = y[q] - y[p];
      const h = Math.sqrt(dx * dx + dy * dy) / 2;
      const mx = nodeX[from] - (x[p] + x[q]) / 2;
      const my = nodeY[from] - (y[p] + y[q]) / 2;
      const s = (my * dx - mx * dy) / (2 * h * h);
      const t = s + (vy * dx - vx * dy) / (2 * h * h);
      area += h * h * (t - s);
      turn += 2 * Math.atan2(t - s, 1 + s * t);
      volume += distanceBesideVertices(h, s, t);
    }
    least = Math.min(least, a);
    greatest = Math.max(greatest, a, b);
  }
  sums[at + AREA] += area;
  sums[at + LENGTH] += length;
  sums[at + TURN] += turn;
  sums[at + VOLUME] += volume;
  sums[at + MIN_CLEARANCE] = Math.min(sums[at + MIN_CLEARANCE], least);
  sums[at + MAX_CLEARANCE] = Math.max(sums[at + MAX_CLEARANCE], greatest);
}
