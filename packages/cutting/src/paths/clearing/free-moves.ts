import type { MedialAxis } from '@pourproof/geometry';
import type { BoxIndex } from '@pourproof/plane';
import { edgeIndex } from '../../depth/edge-index.ts';

/**
 * Rounding of a clearance, relative to it: a wall along a move touches the discs of that clearance exactly.
 */
const TOUCH_REL_TOL = 1e-9;

/**
 * Tells which straight moves keep a distance from the artwork's edge. Coordinates are relative to the axis'
 * origin.
 */
export class FreeMoves {
  readonly #axis: MedialAxis;
  readonly #index: BoxIndex;
  readonly #clearance: number;

  constructor(axis: MedialAxis, clearanceMm: number) {
    this.#axis = axis;
    this.#clearance = clearanceMm * (1 - TOUCH_REL_TOL);
    this.#index = edgeIndex(axis.boundary);
  }

  /** Whether every point between two points of the artwork is at least that far from its edge. */
  isFree(ax: number, ay: number, bx: number, by: number): boolean {
    const reach = this.#clearance + Math.hypot(bx - ax, by - ay) / 2;
    let isFree = true;
    this.#index.visitNear(
      (ax + bx) / 2,
      (ay + by) / 2,
      (distance) => isFree && distance < reach,
      (i) => {
        isFree &&= this.#isFar(i, ax, ay, bx, by);
      },
    );
    return isFree;
  }

  /** Whether boundary edge i is that far from the move. */
  #isFar(i: number, ax: number, ay: number, bx: number, by: number): boolean {
    const { x, y, next } = this.#axis.boundary;
    const j = next[i];
    const side = (px: number, py: number, qx: number, qy: number, tx: number, ty: number): number =>
      (qx - px) * (ty - py) - (qy - py) * (tx - px);
    const isCrossing =
      side(ax, ay, bx, by, x[i], y[i]) * side(ax, ay, bx, by, x[j], y[j]) < 0 &&
      side(x[i], y[i], x[j], y[j], ax, ay) * side(x[i], y[i], x[j], y[j], bx, by) < 0;
    const least = Math.min(
      distanceTo(ax, ay, x[i], y[i], x[j], y[j]),
      distanceTo(bx, by, x[i], y[i], x[j], y[j]),
      distanceTo(x[i], y[i], ax, ay, bx, by),
      distanceTo(x[j], y[j], ax, ay, bx, by),
    );
    return !isCrossing && least >= this.#clearance;
  }
}

/** Distance from p to the segment from a to b. */
function distanceTo(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const dd = dx * dx + dy * dy;
  const t = dd > 0 ? Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / dd)) : 0;
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}
