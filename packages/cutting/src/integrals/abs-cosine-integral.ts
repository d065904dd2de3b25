/**
 * ∫ |a cos t + b| dt from `from` to `to`, in closed form: the exposure of a wall that turns, with a the
 * product of the level parts of fibre and normal, b that of their vertical parts.
 */
export function absCosineIntegral(a: number, b: number, from: number, to: number): number {
  const whole = (t: number): number => a * Math.sin(t) + b * t;
  const stops = [from, to];
  if (Math.abs(b) < Math.abs(a)) {
    // cos t = −b/a twice per turn
    const zero = Math.acos(-b / a);
    const turn = 2 * Math.PI;
    for (const first of [zero, -zero]) {
      for (let t = first + turn * Math.ceil((from - first) / turn); t < to; t += turn) {
        stops.push(t);
      }
    }
    stops.sort((p, q) => p - q);
  }
  let sum = 0;
  for (let k = 0; k + 1 < stops.length; k++) {
    sum += Math.abs(whole(stops[k + 1]) - whole(stops[k]));
  }
  return sum;
}
