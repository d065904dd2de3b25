/** A part of a curve: points whose convex hull holds it, and its two halves. */
export interface CurvePiece {
  /** `[x0,y0,…]`, from the start of the part to its end. */
  readonly hull: readonly number[];
  readonly halves: () => readonly [CurvePiece, CurvePiece];
}

/** A cubic by its four points. */
export function cubicPiece(hull: readonly number[]): CurvePiece {
  return {
    hull,
    halves: () => {
      const rows = [hull];
      while (rows.at(-1)!.length > 2) {
        const last = rows.at(-1)!;
        rows.push(Array.from({ length: last.length - 2 }, (_, i) => (last[i]! + last[i + 2]!) / 2));
      }
      const left = rows.flatMap((row) => row.slice(0, 2));
      const right = rows.toReversed().flatMap((row) => row.slice(-2));
      return [cubicPiece(left), cubicPiece(right)];
    },
  };
}

/** Half-axis vectors of an ellipse around the origin. */
export interface HalfAxes {
  readonly ux: number;
  readonly uy: number;
  readonly vx: number;
  readonly vy: number;
}

export function pointAt({ ux, uy, vx, vy }: HalfAxes, angle: number): [number, number] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [c * ux + s * vx, c * uy + s * vy];
}

/** An arc of an ellipse: below half a turn it lies in the triangle of its ends and where their tangents meet. */
export function arcPiece(axes: HalfAxes, from: number, to: number): CurvePiece {
  const [mid, half] = [(from + to) / 2, (to - from) / 2];
  const [tx, ty] = pointAt(axes, mid);
  const [ax, ay] = pointAt(axes, from);
  const [bx, by] = pointAt(axes, to);
  const reach = Math.max(Math.hypot(axes.ux, axes.uy), Math.hypot(axes.vx, axes.vy));
  const far = 1 / Math.cos(half);
  const hull =
    half < 1.2
      ? [ax, ay, far * tx, far * ty, bx, by]
      : [ax, ay, -2 * reach, -2 * reach, 2 * reach, -2 * reach, 0, 2 * reach, bx, by];
  return { hull, halves: () => [arcPiece(axes, from, mid), arcPiece(axes, mid, to)] };
}

/** Halvings after which a part is a point. */
const MAX_DEPTH = 26;

/**
 * How far a curve leaves the edges of a closed ring, as a multiple of what each allows: at most 1 where every part of it lies whole in what is
 * around one edge (which is convex, so that it holds the curve where it holds the hull), else the share of a point that does not.
 */
export function farthest(
  curve: CurvePiece,
  ring: ArrayLike<number>,
  allowedMm: (edge: number) => number,
): number {
  const n = ring.length / 2;
  let worst = 1;
  let edge = 0;
  const stack: (readonly [CurvePiece, number])[] = [[curve, 0]];
  for (let top = stack.pop(); top !== undefined; top = stack.pop()) {
    const [piece, depth] = top;
    let k = 0;
    while (k < n && !holds(ring, (edge + k) % n, piece.hull, allowedMm((edge + k) % n))) {
      k++;
    }
    if (k < n) {
      edge = (edge + k) % n;
    } else if (depth === MAX_DEPTH) {
      const [x, y] = piece.hull as [number, number];
      const shares = Array.from({ length: n }, (_, i) => distanceToEdge(ring, i, x, y) / allowedMm(i));
      worst = Math.max(worst, Math.min(...shares));
    } else {
      const [left, right] = piece.halves();
      stack.push([right, depth + 1], [left, depth + 1]);
    }
    if (worst > 1 + 1e-6) {
      return worst;
    }
  }
  return worst;
}

function holds(ring: ArrayLike<number>, edge: number, hull: readonly number[], mm: number): boolean {
  for (let i = 0; i < hull.length; i += 2) {
    if (!(distanceToEdge(ring, edge, hull[i]!, hull[i + 1]!) <= mm)) {
      return false;
    }
  }
  return true;
}

function distanceToEdge(ring: ArrayLike<number>, edge: number, x: number, y: number): number {
  const j = (2 * edge + 2) % ring.length;
  const [ax, ay] = [ring[2 * edge]!, ring[2 * edge + 1]!];
  const [dx, dy] = [ring[j]! - ax, ring[j + 1]! - ay];
  const len2 = dx * dx + dy * dy;
  const t = len2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / len2));
  return Math.hypot(ax + t * dx - x, ay + t * dy - y);
}
