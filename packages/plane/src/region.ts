import { type Bounds, boundsOf } from './bounds.ts';

/**
 * Rings in one flat array. `coords` is `[x0,y0,x1,y1,…]` in mm (x right, y down); `ringEnds[k]` is the index
 * of the point after the last point of ring k, so ring k runs from `ringEnds[k-1] ?? 0`. A ring is closed
 * without repeating its first point.
 */
export interface Rings {
  readonly coords: Float64Array;
  readonly ringEnds: Uint32Array;
}

/** Which points the rings of one shape enclose where they overlap (SVG 2 §13.4.2). */
export type FillRule = 'nonzero' | 'evenodd';

/** A shape as drawn: rings may cross, overlap and run either way; the fill rule decides what is inside. */
export interface Region extends Rings {
  readonly fillRule: FillRule;
}

declare const cleanBrand: unique symbol;

/**
 * A region that geometry may trust: rings are simple and meet in single points at most; outer rings have
 * positive {@link ringArea}, holes negative; rings that touch in a point are split so that the inside stays
 * on one side. Only `resolveRegions` and the booleans of the arrangement package make one.
 */
export type CleanRegion = Rings & { readonly [cleanBrand]: true };

/** Index of the first point of ring k. */
export function ringStart(rings: Rings, k: number): number {
  return k === 0 ? 0 : rings.ringEnds[k - 1];
}

/**
 * Signed area in mm² of the closed ring through points `from` up to but not including `to`: positive when it
 * turns from +x to +y, which is clockwise as seen with y down. 0 for fewer than three points.
 */
export function ringArea(coords: ArrayLike<number>, from = 0, to: number = coords.length / 2): number {
  const n = to - from;
  if (n < 3) {
    return 0;
  }
  // relative to the first point, so that artwork far from the origin keeps its digits
  const x0 = coords[2 * from] as number;
  const y0 = coords[2 * from + 1] as number;
  let sum = 0;
  let px = (coords[2 * (to - 1)] as number) - x0;
  let py = (coords[2 * (to - 1) + 1] as number) - y0;
  for (let i = from; i < to; i++) {
    const qx = (coords[2 * i] as number) - x0;
    const qy = (coords[2 * i + 1] as number) - y0;
    sum += px * qy - qx * py;
    px = qx;
    py = qy;
  }
  return sum / 2;
}

/** Sum of the signed areas of all rings, mm²: the area of a {@link CleanRegion}. */
export function signedArea(rings: Rings): number {
  let sum = 0;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    sum += ringArea(rings.coords, ringStart(rings, k), rings.ringEnds[k]);
  }
  return sum;
}

/** Total length of all rings, closed, in mm. */
export function perimeter(rings: Rings): number {
  const { coords } = rings;
  let sum = 0;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      const dx = coords[2 * j] - coords[2 * i];
      const dy = coords[2 * j + 1] - coords[2 * i + 1];
      sum += Math.sqrt(dx * dx + dy * dy);
    }
  }
  return sum;
}

/** The bounding box of all rings; empty for no rings. */
export function ringsBounds(rings: Rings): Bounds {
  return boundsOf(rings.coords);
}

/**
 * Packs rings, each a flat `[x0,y0,x1,y1,…]` list, into {@link Rings}.
 *
 * @example
 * const plate = packRings([[0, 0, 40, 0, 40, 25, 0, 25]]); // x, y of each corner; y points down
 * signedArea(plate); // 1000
 */
export function packRings(rings: readonly ArrayLike<number>[]): Rings {
  const coords = new Float64Array(rings.reduce((n, r) => n + r.length, 0));
  const ringEnds = new Uint32Array(rings.length);
  let at = 0;
  rings.forEach((ring, k) => {
    coords.set(ring, at);
    at += ring.length;
    ringEnds[k] = at / 2;
  });
  return { coords, ringEnds };
}

/** The coordinates of ring k, as a view without copying. */
export function ringCoords(rings: Rings, k: number): Float64Array {
  return rings.coords.subarray(2 * ringStart(rings, k), 2 * rings.ringEnds[k]);
}
