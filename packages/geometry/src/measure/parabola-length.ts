/** Twice the length of the parabola y = x²/2 from x = 0 to t, with the sign of t. */
export function parabolaLength(t: number): number {
  return t * Math.sqrt(1 + t * t) + Math.asinh(t);
}

/** Below this square of half an arc over its distance to the focus's twin, see {@link parabolaArc}, the series is as exact as rounding. */
const SHORT_SQUARED = 1 / 4096;

/**
 * Length of the parabola y = x²/2 from x = s to t ≥ s.
 *
 * Most arcs are short. With m the middle, w half of t − s and S² = 1 + m² it is w·S·∫√(1 + 2·c·q·z + q²z²) dz over z = −1 … 1, c = m/S, q = w/S. The
 * integrand is the generating function of the Gegenbauer polynomials C_n, n from 0, of order −1/2; from n = 2 on these are at most 2/(2n − 1), so what the
 * series leaves out from q⁸ on is less than q⁸/67 of the length, 6e-17. A difference of closed forms would lose digits there.
 */
export function parabolaArc(s: number, t: number): number {
  const m = (s + t) / 2;
  const w = (t - s) / 2;
  const squared = 1 + m * m;
  const q2 = (w * w) / squared;
  if (q2 > SHORT_SQUARED) {
    return (parabolaLength(t) - parabolaLength(s)) / 2;
  }
  const c2 = (m * m) / squared;
  const series = 1 / 6 + q2 * ((5 * c2 - 1) / 40 + (q2 * (1 + c2 * (21 * c2 - 14))) / 112);
  return 2 * w * Math.sqrt(squared) * (1 + (q2 / squared) * series);
}
