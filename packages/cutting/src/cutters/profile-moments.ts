import type { Cutter } from './cutter.ts';

/** Integrals over height, from a cutter's tip up. */
export interface HeightMoments {
  /** ∫ radius dh, mm². */
  readonly radiusMm2: number;
  /** ∫ radius² dh, mm³. */
  readonly radiusSquaredMm3: number;
}

/** Integrals along a cutter's profile, level pieces left out, from the tip up. */
export interface FlankMoments {
  /** Length, mm. */
  readonly flankMm: number;
  /** ∫ radius dℓ, mm². */
  readonly flankRadiusMm2: number;
}

/** Integrals over radius, from a cutter's axis out. */
export interface RadiusMoments {
  /** ∫ height dr, mm². */
  readonly heightMm2: number;
  /** ∫ r · height dr, mm³. */
  readonly heightRadiusMm3: number;
}

/** Moments up to a height above the tip, in closed form; above the profile the radius stays the same. */
export function heightMoments({ pieces }: Cutter, heightMm: number): HeightMoments {
  let radiusMm2 = 0;
  let radiusSquaredMm3 = 0;
  for (const { fromHeightMm, fromRadiusMm: a, toHeightMm, toRadiusMm, arc } of pieces) {
    const rise = Math.min(heightMm, toHeightMm) - fromHeightMm;
    if (rise <= 0) {
      continue;
    }
    if (arc === undefined) {
      const b = a + (rise / (toHeightMm - fromHeightMm)) * (toRadiusMm - a);
      radiusMm2 += (rise * (a + b)) / 2;
      radiusSquaredMm3 += (rise * (a * a + a * b + b * b)) / 3;
    } else {
      const { radiusMm: r, centreHeightMm, centreRadiusMm: c } = arc;
      const v0 = fromHeightMm - centreHeightMm;
      const v1 = v0 + rise;
      const beside = underCircle(v1, r) - underCircle(v0, r);
      radiusMm2 += c * rise + beside;
      radiusSquaredMm3 += c * c * rise + 2 * c * beside + r * r * rise - (v1 ** 3 - v0 ** 3) / 3;
    }
  }
  const { toHeightMm, toRadiusMm: r } = pieces[pieces.length - 1];
  const above = Math.max(0, heightMm - toHeightMm);
  return { radiusMm2: radiusMm2 + r * above, radiusSquaredMm3: radiusSquaredMm3 + r * r * above };
}

/** Moments up to a height above the tip, in closed form; above the profile the side is upright. */
export function flankMoments({ pieces }: Cutter, heightMm: number): FlankMoments {
  let flankMm = 0;
  let flankRadiusMm2 = 0;
  for (const { fromHeightMm, fromRadiusMm: a, toHeightMm, toRadiusMm, arc } of pieces) {
    const rise = Math.min(heightMm, toHeightMm) - fromHeightMm;
    if (rise <= 0) {
      continue;
    }
    if (arc === undefined) {
      const gain = (rise / (toHeightMm - fromHeightMm)) * (toRadiusMm - a);
      const slant = Math.sqrt(rise * rise + gain * gain);
      flankMm += slant;
      flankRadiusMm2 += slant * (a + gain / 2);
    } else {
      const { radiusMm: r, centreHeightMm, centreRadiusMm: c } = arc;
      const v0 = fromHeightMm - centreHeightMm;
      const length = r * (Math.asin(clampUnit((v0 + rise) / r)) - Math.asin(clampUnit(v0 / r)));
      flankMm += length;
      flankRadiusMm2 += c * length + r * rise;
    }
  }
  const { toHeightMm, toRadiusMm } = pieces[pieces.length - 1];
  const above = Math.max(0, heightMm - toHeightMm);
  return { flankMm: flankMm + above, flankRadiusMm2: flankRadiusMm2 + toRadiusMm * above };
}

/** Moments out to a radius, at most the cutter's largest, in closed form. */
export function radiusMoments(cutter: Cutter, radiusMm: number): RadiusMoments {
  let heightMm2 = 0;
  let heightRadiusMm3 = 0;
  for (const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } of cutter.pieces) {
    if (radiusMm <= fromRadiusMm || toRadiusMm === fromRadiusMm) {
      continue;
    }
    const a = fromRadiusMm;
    const b = Math.min(radiusMm, toRadiusMm);
    if (arc === undefined) {
      const slope = (toHeightMm - fromHeightMm) / (toRadiusMm - a);
      const atAxis = fromHeightMm - slope * a;
      heightMm2 += (b - a) * (atAxis + (slope * (a + b)) / 2);
      heightRadiusMm3 += (atAxis * (b * b - a * a)) / 2 + (slope * (b ** 3 - a ** 3)) / 3;
      continue;
    }
    const { radiusMm: r, centreHeightMm: h, centreRadiusMm: c } = arc;
    const [w0, w1] = [a - c, b - c];
    const part = h * (b - a) - (underCircle(w1, r) - underCircle(w0, r));
    heightMm2 += part;
    heightRadiusMm3 += c * part + (h * (w1 * w1 - w0 * w0)) / 2 + (cubed(w1, r) - cubed(w0, r)) / 3;
  }
  return { heightMm2, heightRadiusMm3 };
}

/** ∫ √(r² − v²) dv from 0 to v. */
function underCircle(v: number, r: number): number {
  return (v * Math.sqrt(Math.max(0, (r - v) * (r + v))) + r * r * Math.asin(clampUnit(v / r))) / 2;
}

/** (r² − w²)^(3/2). */
function cubed(w: number, r: number): number {
  const square = Math.max(0, (r - w) * (r + w));
  return square * Math.sqrt(square);
}

function clampUnit(x: number): number {
  return Math.min(1, Math.max(-1, x));
}
