import type { PointSink } from './point-sink.ts';

/**
 * Moves the inner points of a polyline so that it has the area of the curve it stands for, then appends all
 * but the first point.
 *
 * @param points `[x0,y0,…]`, changed in place
 * @param slices signed area between the curve and the chord of each segment
 * @param limit largest distance by which a point is moved
 * @returns area that no point could take, in mm²; 0 except for hairpins in very few segments
 */
export function appendWithArea(
  out: PointSink,
  points: number[],
  slices: ArrayLike<number>,
  limit: number,
): number {
  const missing = spreadArea(points, slices, limit, []);
  appendRest(out, points);
  return missing;
}

/** Appends all points but the first. */
export function appendRest(out: PointSink, points: readonly number[]): void {
  for (let i = 2; i < points.length; i += 2) {
    out.push(points[i], points[i + 1]);
  }
}

/**
 * Moves each inner point along the normal of its two neighbours so that the polyline takes in the slices that
 * chords would cut off.
 *
 * A slice is shared by its two ends; an end slice, whose outer end must stay where the next segment joins,
 * goes to its inner end alone. At a cusp, where a point would have to move further than `limit`, the rest is
 * carried to the next point, and what is left at the end goes backwards, so that the sum stays exact.
 *
 * @param moves scratch list, overwritten: how far each point was moved, positive where the area grew
 * @returns area that no point could take
 */
export function spreadArea(
  points: number[],
  slices: ArrayLike<number>,
  limit: number,
  moves: number[],
): number {
  const n = slices.length;
  moves.length = 0;
  moves.push(0);
  let carried = 0;
  for (let i = 1; i < n; i++) {
    moves.push(0);
    const before = slices[i - 1] / (i === 1 ? 1 : 2);
    const after = slices[i] / (i === n - 1 ? 1 : 2);
    carried = moveForArea(points, moves, i, before + after + carried, limit);
  }
  moves.push(0);
  for (let i = n - 2; i > 0 && carried !== 0; i--) {
    carried = moveForArea(points, moves, i, carried, limit);
  }
  return carried;
}

/**
 * Moves point i so that the polyline's area grows by `area`, by at most `limit` in all; returns the area
 * still missing.
 */
function moveForArea(points: number[], moves: number[], i: number, area: number, limit: number): number {
  const dx = points[2 * i + 2] - points[2 * i - 2];
  const dy = points[2 * i + 3] - points[2 * i - 1];
  const length = Math.sqrt(dx * dx + dy * dy);
  const moved = moves[i];
  const max = ((limit - moved) * length) / 2;
  const min = ((-limit - moved) * length) / 2;
  const taken = Math.max(min, Math.min(max, area));
  if (taken !== 0) {
    const k = (2 * taken) / length;
    moves[i] = moved + k;
    points[2 * i] += k * (dy / length);
    points[2 * i + 1] -= k * (dx / length);
  }
  return area - taken;
}
