// Of the normal distribution, with no use of our own code.

/** Φ by Simpson's rule over the density, in a table: no use of our own. */
const PHI = (() => {
  const step = 0.001;
  const density = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  const table = new Float64Array(18_001);
  for (let k = 1; k < table.length; k++) {
    const z = -9 + k * step;
    table[k] = table[k - 1]! + (step / 6) * (density(z - step) + 4 * density(z - step / 2) + density(z));
  }
  return table;
})();

/** Share below z. */
export function phi(z: number): number {
  const at = (Math.min(8.999, Math.max(-9, z)) + 9) / 0.001;
  const k = Math.floor(at);
  return PHI[k]! + (at - k) * (PHI[k + 1]! - PHI[k]!);
}

/** z below which a share lies. */
export function quantileOf(share: number): number {
  let [low, high] = [-9, 9];
  for (let turn = 0; turn < 40; turn++) {
    const middle = (low + high) / 2;
    [low, high] = phi(middle) < share ? [middle, high] : [low, middle];
  }
  return (low + high) / 2;
}

/** ln of the density of a normal vector about 0, by elimination. */
export function logNormal(covariance: readonly (readonly number[])[], y: readonly number[]): number {
  const a = covariance.map((row) => [...row]);
  const b = [...y];
  let sum = -0.5 * y.length * Math.log(2 * Math.PI);
  for (let i = 0; i < y.length; i++) {
    sum -= 0.5 * (Math.log(a[i]![i]!) + b[i]! ** 2 / a[i]![i]!);
    for (let k = i + 1; k < y.length; k++) {
      const f = a[k]![i]! / a[i]![i]!;
      b[k]! -= f * b[i]!;
      for (let j = i; j < y.length; j++) {
        a[k]![j]! -= f * a[i]![j]!;
      }
    }
  }
  return sum;
}
