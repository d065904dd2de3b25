import type { Point } from './point.ts';
import type { Rings } from './region.ts';

/** An affine map `[a,b,c,d,e,f]` as in SVG: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Transform = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** The map that changes nothing. */
export const IDENTITY: Transform = [1, 0, 0, 1, 0, 0];

/**
 * The map that applies `inner` first, then `outer`.
 *
 * @example
 * applyTransform(compose(translation(10, 0), scaling(2)), [1, 1]).join(); // 12,2
 */
export function compose(outer: Transform, inner: Transform): Transform {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** The image of a point under a map. */
export function applyTransform(t: Transform, [x, y]: Point): Point {
  return [t[0] * x + t[2] * y + t[4], t[1] * x + t[3] * y + t[5]];
}

/** Rotation by `rad` about the origin, from +x towards +y (clockwise as seen with y down). */
export function rotation(rad: number): Transform {
  const c = Math.cos(rad);
  const s = Math.sin(rad);
  return [c, s, -s, c, 0, 0];
}

/** Scaling about the origin. */
export function scaling(sx: number, sy: number = sx): Transform {
  return [sx, 0, 0, sy, 0, 0];
}

/** Translation by (x, y), mm. */
export function translation(x: number, y: number): Transform {
  return [1, 0, 0, 1, x, y];
}

/** The factor by which a map scales areas; negative when it mirrors. */
export function determinant(t: Transform): number {
  return t[0] * t[3] - t[1] * t[2];
}

/**
 * The rings with every point mapped; order and direction of rings are kept, so a mirroring map flips the sign
 * of areas.
 */
export function transformRings<T extends Rings>(t: Transform, rings: T): T {
  const { coords } = rings;
  const out = new Float64Array(coords.length);
  for (let i = 0; i < coords.length; i += 2) {
    const x = coords[i];
    const y = coords[i + 1];
    out[i] = t[0] * x + t[2] * y + t[4];
    out[i + 1] = t[1] * x + t[3] * y + t[5];
  }
  return { ...rings, coords: out };
}
