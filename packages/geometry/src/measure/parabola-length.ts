/** Twice the length of the parabola y = x²/2 from x = 0 to t, with the sign of t. */
export function parabolaLength(t: number): number {
  return t * Math.sqrt(1 + t * t) + Math.asinh(t);
}

/** Up to this q², see {@link parabolaArc}, the series is as exact as rounding. */
const SHORT_SQUARED = 1 / 1024;

/**
 * Length of the parabola y = x²/(2h), h of either sign, from x = s to t, with the sign of t − s.
 *
 * Most arcs are short, and there a difference of closed forms would lose digits. With m the middle, w half of
 * t − s and D² = h² + m² the length is w·D/h·∫√(1 + 2cqz + q²z²) dz over z = −1 … 1, c = m/D, q = w/D. The
 * integrand generates the Gegenbauer polynomials C_n of order −1/2, which from n = 2 on are at most 2/(2n −
 * 1): what the series omits from q¹⁰ on is less than q¹⁰/104 of the length, 1e-17.
 */
export function parabolaArc(h: number, s: number, t: number): number {
  const m = (s + t) / 2;
  const w = (t - s) / 2;
  const squared = h * h + m * m;
  const inverse = 1 / squared;
  const q2 = w * w * inverse;
  if (q2 > SHORT_SQUARED) {
    return (h / 2) * (parabolaLength(t / h) - parabolaLength(s / h));
  }
  const c2 = m * m * inverse;
  const seventh = (1 + c2 * (21 * c2 - 14)) / 112;
  const ninth = (c2 * (135 + c2 * (429 * c2 - 495)) - 5) / 1152;
  const series = 1 / 6 + q2 * ((5 * c2 - 1) / 40 + q2 * (seventh + q2 * ninth));
  return ((2 * w * Math.sqrt(squared)) / Math.abs(h)) * (1 + q2 * (1 - c2) * series);
}

/** Places and weights of Gauss' rule with five points on −1 … 1. */
const GAUSS = [
  [0, 128 / 225],
  [0.538469310105683, 0.478628670499366],
  [-0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
  [-0.906179845938664, 0.236926885056189],
] as const;

/**
 * Integral along the same arc of the distance to its focus, (x² + h²)/(2h), which is that to its directrix; h above 0.
 */
export function parabolaSweep(h: number, s: number, t: number): number {
  const m = (s + t) / (2 * h);
  const w = (t - s) / (2 * h);
  if (w * w > SHORT_SQUARED * (1 + m * m)) {
    return ((h * h) / 2) * (sweepTo(t / h) - sweepTo(s / h));
  }
  // short arcs would lose digits in a difference; the rule is as exact as rounding there
  let sum = 0;
  for (const [place, weight] of GAUSS) {
    const z = m + w * place;
    const squared = 1 + z * z;
    sum += weight * squared * Math.sqrt(squared);
  }
  return ((h * h) / 2) * w * sum;
}

/** Integral of (1 + z²)^(3/2) from 0 to z. */
function sweepTo(z: number): number {
  return (z * (2 * z * z + 5) * Math.sqrt(1 + z * z) + 3 * Math.asinh(z)) / 8;
}
