import { type Bounds, boundsOf } from './bounds.ts';

/**
 * Rings in one flat array. `coords` is `[x0,y0,x1,y1,…]` in mm (x right, y down);
 * `ringEnds[k]` is the index of the point after the last point of ring k, so ring k runs from `ringEnds[k-1] ?? 0`.
 * A ring is closed without repeating its first point.
 */
export interface Rings {
  readonly coords: Float64Array;
  readonly ringEnds: Uint32Array;
}

/** How overlapping rings of one shape make its inside (SVG 2 §13.4.2). */
export type FillRule = 'nonzero' | 'evenodd';

/** A shape as drawn: rings may cross, overlap and turn either way; the fill rule says what is inside. */
export interface Region extends Rings {
  readonly fillRule: FillRule;
}

declare const cleanBrand: unique symbol;

/**
 * A region that geometry may trust: rings are simple and meet at most in single points; outer rings have
 * positive {@link ringArea}, holes negative; rings that touch in a point are split so that the inside is on the same side all along.
 * Only `resolveRegions` of the geometry package makes one.
 */
export type CleanRegion = Rings & { readonly [cleanBrand]: true };

/** Index of the first point of ring k. */
export function ringStart(rings: Rings, k: number): number {
  return k === 0 ? 0 : rings.ringEnds[k - 1];
}

/**
 * Signed area of the points `from`…`to` (excluded) taken as a closed ring, in mm²:
 * positive when it turns from +x to +y, which is clockwise as seen with y down.
 */
export function ringArea(coords: ArrayLike<number>, from = 0, to: number = coords.length / 2): number {
  const n = to - from;
  if (n < 3) {
    return 0;
  }
  // relative to the first point, so that far-away artwork keeps its digits
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

/** Sum of the signed ring areas in mm²; for a {@link CleanRegion} its area. */
export function signedArea(rings: Rings): number {
  let sum = 0;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    sum += ringArea(rings.coords, ringStart(rings, k), rings.ringEnds[k]);
  }
  return sum;
}

/** Total length of all rings in mm, each closed. */
export function perimeter(rings: Rings): number {
  const { coords } = rings;
  let sum = 0;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      sum += Math.hypot(coords[2 * j] - coords[2 * i], coords[2 * j + 1] - coords[2 * i + 1]);
    }
  }
  return sum;
}

/** The box around all rings. */
export function ringsBounds(rings: Rings): Bounds {
  return boundsOf(rings.coords);
}

/** Packs lists of flat coordinate lists into {@link Rings}. */
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

/** Ring k as its own flat view of the coordinates (no copy). */
export function ringCoords(rings: Rings, k: number): Float64Array {
  return rings.coords.subarray(2 * ringStart(rings, k), 2 * rings.ringEnds[k]);
}
