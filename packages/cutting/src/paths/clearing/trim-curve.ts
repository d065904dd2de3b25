import { pollStep } from '@pourproof/plane';
import { arcCentre } from '../arc-centre.ts';

/**
 * What is left of an open curve: its points, and the range `from` … `to` (excluded) of moves that are uncut.
 */
export interface TrimmedCurve {
  readonly points: number[];
  /** Index, in the untrimmed curve, that corresponds to the first point now. */
  readonly shift: number;
  readonly from: number;
  readonly to: number;
}

/**
 * A point farther from a disc's centre by less than this, relative to the radius, is on its rim: rounding.
 */
const ON_RIM_REL_TOL = 1e-9;

/** A disc, mm. */
export interface Disc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * Trims an open curve `[x, y, bulge, …]` so that it starts and ends on the rims of two discs: what lies in
 * the disc at either end is cut off, and a curve that does not reach a disc is extended straight to its rim.
 * Straight moves are cut on the rim; arcs are kept unless they lie in the disc. At least one point is kept. A
 * radius of 0 or less means no disc.
 */
export function trimCurve(points: readonly number[], atStart: Disc, atEnd: Disc): TrimmedCurve {
  const last = points.length / 3 - 1;
  let from = 0;
  while (from < last && isInside(points, from, atStart)) {
    from++;
  }
  let to = last;
  while (to > from && isInside(points, to - 1, atEnd)) {
    to--;
  }
  const kept = points.slice(3 * from, 3 * to + 3);
  const isStartCut = to > from && cutStart(kept, 0, 1, atStart);
  const n = kept.length / 3;
  const isEndCut = to > from && cutStart(kept, n - 1, n - 2, atEnd);
  const lead = rimTowards(kept[0], kept[1], atStart);
  const out = rimTowards(kept[3 * n - 3], kept[3 * n - 2], atEnd);
  kept[3 * n - 1] = 0;
  return {
    points: [...lead, ...kept, ...out],
    shift: from - lead.length / 3,
    from: from + (isStartCut ? 1 : 0),
    to: to - (isEndCut ? 1 : 0),
  };
}

/**
 * The point of the rim nearest to a point outside the disc; an empty list for a point in it or on its rim.
 */
function rimTowards(x: number, y: number, disc: Disc): number[] {
  const d = Math.hypot(x - disc.x, y - disc.y);
  if (disc.radius <= 0 || d <= disc.radius * (1 + ON_RIM_REL_TOL)) {
    return [];
  }
  const share = disc.radius / d;
  return [disc.x + share * (x - disc.x), disc.y + share * (y - disc.y), 0];
}

/** Whether all of an open curve lies in a disc. */
export function liesIn(points: readonly number[], disc: Disc): boolean {
  const last = points.length / 3 - 1;
  for (let i = 0; i < last; i++) {
    pollStep();
    if (!isInside(points, i, disc)) {
      return false;
    }
  }
  return isIn(points[3 * last], points[3 * last + 1], disc);
}

/** Whether the move from point i to the next lies in the disc. */
function isInside(points: readonly number[], i: number, disc: Disc): boolean {
  const [ax, ay, bulge, bx, by] = points.slice(3 * i, 3 * i + 5);
  if (!(isIn(ax, ay, disc) && isIn(bx, by, disc))) {
    return false;
  }
  if (bulge === 0) {
    return true;
  }
  const [cx, cy] = arcCentre(ax, ay, bx, by, bulge);
  const radius = Math.hypot(ax - cx, ay - cy);
  const [dx, dy] = [cx - disc.x, cy - disc.y];
  const d = Math.hypot(dx, dy);
  if (d + radius <= disc.radius) {
    return true;
  }
  // the point of the circle farthest from the disc's centre is outside: it must not lie on the arc
  const [fx, fy] = d > 0 ? [cx + (dx / d) * radius, cy + (dy / d) * radius] : [ax, ay];
  const side = (bx - ax) * (fy - ay) - (by - ay) * (fx - ax);
  return d > 0 && side * bulge > 0;
}

function isIn(x: number, y: number, disc: Disc): boolean {
  return Math.hypot(x - disc.x, y - disc.y) <= disc.radius;
}

/**
 * Moves point i towards its neighbour j, to where the straight move between them leaves the disc; returns
 * whether it moved.
 */
function cutStart(points: number[], i: number, j: number, disc: Disc): boolean {
  const bulge = points[3 * Math.min(i, j) + 2];
  const [ax, ay] = [points[3 * i] - disc.x, points[3 * i + 1] - disc.y];
  if (bulge !== 0 || Math.hypot(ax, ay) >= disc.radius) {
    return false;
  }
  const [dx, dy] = [points[3 * j] - points[3 * i], points[3 * j + 1] - points[3 * i + 1]];
  const a = dx * dx + dy * dy;
  const b = ax * dx + ay * dy;
  const c = ax * ax + ay * ay - disc.radius * disc.radius;
  const t = a > 0 ? (-b + Math.sqrt(Math.max(0, b * b - a * c))) / a : 1;
  const share = Math.min(1, t);
  points[3 * i] += share * dx;
  points[3 * i + 1] += share * dy;
  return true;
}
