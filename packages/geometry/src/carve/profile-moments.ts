import type { Cutter, ProfilePiece } from './cutter.ts';

/** Integrals over a cutter's height, from the tip up. */
export interface HeightMoments {
  /** ∫ radius dh, mm². */
  readonly radiusMm2: number;
  /** ∫ radius² dh, mm³. */
  readonly radiusSquaredMm3: number;
  /** Length of the profile without its level pieces, mm, and ∫ radius over it, mm². */
  readonly flankMm: number;
  readonly flankRadiusMm2: number;
}

/** Integrals over a cutter's radius, from its axis out. */
export interface RadiusMoments {
  /** ∫ height dr, mm². */
  readonly heightMm2: number;
  /** ∫ r · height dr, mm³. */
  readonly heightRadiusMm3: number;
}

/** Closed forms up to a height above the tip; above the profile the radius stays. */
export function heightMoments(cutter: Cutter, heightMm: number): HeightMoments {
  const sum = { radiusMm2: 0, radiusSquaredMm3: 0, flankMm: 0, flankRadiusMm2: 0 };
  for (const piece of cutter.pieces) {
    if (heightMm > piece.fromHeightMm && piece.toHeightMm > piece.fromHeightMm) {
      addPiece(sum, piece, Math.min(heightMm, piece.toHeightMm));
    }
  }
  const last = cutter.pieces[cutter.pieces.length - 1];
  const above = Math.max(0, heightMm - last.toHeightMm);
  const r = last.toRadiusMm;
  return {
    radiusMm2: sum.radiusMm2 + r * above,
    radiusSquaredMm3: sum.radiusSquaredMm3 + r * r * above,
    flankMm: sum.flankMm + above,
    flankRadiusMm2: sum.flankRadiusMm2 + r * above,
  };
}

function addPiece(
  sum: { -readonly [K in keyof HeightMoments]: number },
  { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc }: ProfilePiece,
  top: number,
): void {
  const rise = top - fromHeightMm;
  if (arc === undefined) {
    const a = fromRadiusMm;
    const b = a + (rise / (toHeightMm - fromHeightMm)) * (toRadiusMm - a);
    const slant = Math.hypot(rise, b - a);
    sum.radiusMm2 += (rise * (a + b)) / 2;
    sum.radiusSquaredMm3 += (rise * (a * a + a * b + b * b)) / 3;
    sum.flankMm += slant;
    sum.flankRadiusMm2 += (slant * (a + b)) / 2;
    return;
  }
  const { radiusMm: r, centreHeightMm, centreRadiusMm: c } = arc;
  const v0 = fromHeightMm - centreHeightMm;
  const v1 = top - centreHeightMm;
  const beside = underCircle(v1, r) - underCircle(v0, r);
  const length = r * (Math.asin(clampUnit(v1 / r)) - Math.asin(clampUnit(v0 / r)));
  sum.radiusMm2 += c * rise + beside;
  sum.radiusSquaredMm3 += c * c * rise + 2 * c * beside + r * r * rise - (v1 ** 3 - v0 ** 3) / 3;
  sum.flankMm += length;
  sum.flankRadiusMm2 += c * length + r * rise;
}

/** Closed forms out to a radius, at most the cutter's largest. */
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

/** ∫ √(r² − v²) dv from 0. */
function underCircle(v: number, r: number): number {
  return (v * Math.sqrt(Math.max(0, (r - v) * (r + v))) + r * r * Math.asin(clampUnit(v / r))) / 2;
}

/** (r² − w²)^(3/2). */
function cubed(w: number, r: number): number {
  return Math.max(0, (r - w) * (r + w)) ** 1.5;
}

function clampUnit(x: number): number {
  return Math.min(1, Math.max(-1, x));
}
