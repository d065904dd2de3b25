import { radians } from '@pourproof/plane';

/** Distance between drawn streaks along a wall, mm. */
const STEP_MM = 0.7;

/**
 * Path data of short strokes along the fibres, both ways from a wall: a picture of where colour may run, not a measurement.
 *
 * @param grainDeg fibre direction, degrees counter-clockwise as seen with y down
 */
export function streaks(wall: Float64Array, grainDeg: number, lengthMm: number): string {
  const dx = Math.cos(radians(grainDeg)) * lengthMm;
  const dy = -Math.sin(radians(grainDeg)) * lengthMm;
  let text = '';
  let rest = 0;
  for (let i = 0; i + 3 < wall.length; i += 2) {
    const [x0, y0, x1, y1] = wall.subarray(i, i + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(x1 - x0, y1 - y0);
    let at = rest;
    for (; at < length; at += STEP_MM) {
      const x = x0 + ((x1 - x0) * at) / length;
      const y = y0 + ((y1 - y0) * at) / length;
      text += `M${(x - dx).toFixed(2)} ${(y - dy).toFixed(2)}L${(x + dx).toFixed(2)} ${(y + dy).toFixed(2)}`;
    }
    rest = at - length;
  }
  return text;
}
