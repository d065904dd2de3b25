import { determinant, type Transform } from '@pourproof/plane';

/** The map back; its numbers are not finite where the map flattens the plane to a line. */
export function inverseTransform(t: Transform): Transform {
  const [a, b, c, d, e, f] = t;
  const det = determinant(t);
  return [d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det];
}
