import type { VertexCell } from '../cells/edge-cells.ts';

/** Integrals over the contacts with a reflex vertex of powers 0, 1, 2 of the clearance c: ∫ cᵏ dt, ∫ cᵏ cos t dt, ∫ cᵏ sin t dt. */
export interface CellMoments {
  readonly plain: readonly [number, number, number];
  readonly cosine: readonly [number, number, number];
  readonly sine: readonly [number, number, number];
}

/**
 * Moments of the contacts of a vertex cell with t from one angle to another, in closed form: with w = tan(t/2) where the other side is a wall and
 * c = h/(1 + cos t) = h (1 + w²)/2, and with w = tan t where it is a vertex and c = h/cos t = h √(1 + w²).
 */
export function cellMoments(cell: VertexCell, from: number, to: number): CellMoments {
  const at = cell.isBesideWall ? besideWall : besideVertex;
  const [a, b] = [at(cell.h, from), at(cell.h, to)];
  const over = (k: number): number => b[k] - a[k];
  return {
    plain: [over(0), over(1), over(2)],
    cosine: [over(3), over(4), over(5)],
    sine: [over(6), over(7), over(8)],
  };
}

function besideWall(h: number, t: number): readonly number[] {
  const w = Math.tan(t / 2);
  const square = (h * h) / 2;
  const cubed = (w * w * w) / 3;
  return [
    t,
    h * w,
    square * (w + cubed),
    Math.sin(t),
    h * (t - w),
    square * (w - cubed),
    -Math.cos(t),
    h * Math.log1p(w * w),
    square * w * w,
  ];
}

function besideVertex(h: number, t: number): readonly number[] {
  const w = Math.tan(t);
  const turned = Math.asinh(w);
  return [
    t,
    h * turned,
    h * h * w,
    Math.sin(t),
    h * t,
    h * h * turned,
    -Math.cos(t),
    (h / 2) * Math.log1p(w * w),
    h * h * Math.sqrt(1 + w * w),
  ];
}

/** The angles between `low` and `high`, exclusive, both from −π to π, at which p cos t + q sin t + r is 0, in rising order. */
export function zerosBetween(p: number, q: number, r: number, low: number, high: number): number[] {
  const size = Math.hypot(p, q);
  if (!(Math.abs(r) < size)) {
    return [];
  }
  const middle = Math.atan2(q, p);
  const beside = Math.acos(-r / size);
  const zeros: number[] = [];
  for (let turn = -2 * Math.PI; turn <= 2 * Math.PI; turn += 2 * Math.PI) {
    for (const t of [middle - beside + turn, middle + beside + turn]) {
      if (t > low && t < high) {
        zeros.push(t);
      }
    }
  }
  return zeros.sort((a, b) => a - b);
}
