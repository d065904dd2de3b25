import type { Band } from '../../../packages/materials/src/calibration/board-fit.ts';
import type { CouponReading } from '../../../packages/materials/src/calibration/coupon.ts';
import { phi } from './normal-distribution.ts';

/** Band of the next slot by sums over a lattice of ln(median) and ln(spread), for a prior of 3 mm. */
export function bruteBand(readings: readonly CouponReading[]): Band {
  const ends = (reading: CouponReading): readonly [number, number] => {
    switch (reading.kind) {
      case 'streak':
        return [reading.lengthMm - (reading.stepMm ?? 0) / 2, reading.lengthMm + (reading.stepMm ?? 0) / 2];
      case 'none-visible':
        return [0, reading.belowMm];
      case 'class':
        return { clean: [0, 0.45], slight: [0.45, 1], moderate: [1, 2], severe: [2, Infinity] }[
          reading.class
        ] as [number, number];
      case 'between':
        return [reading.fromMm, reading.toMm];
    }
  };
  const points: { readonly mu: number; readonly spread: number; readonly weight: number }[] = [];
  const parts = 60;
  // where lengths are measured, one board in twenty is taken to be three times as far off
  const surprised = readings.some(({ kind }) => kind === 'streak') ? 0.05 : 0;
  const normal = (off: number, sd: number): number => Math.exp(-0.5 * (off / sd) ** 2) / sd;
  const before = (off: number): number => (1 - surprised) * normal(off, 0.7) + surprised * normal(off, 2.1);
  // three lengths tell of the spread, so that its ends may be wide
  const isMeasured = readings.filter(({ kind }) => kind === 'streak').length >= 3;
  const [least, most] = isMeasured ? [0.06, 3] : [0.16, 1.6];
  for (let k = 0; k <= parts; k++) {
    const spread = least * (most / least) ** (k / parts);
    for (let mu = Math.log(3) - 6; mu <= Math.log(3) + 6; mu += 0.02) {
      let weight = before(mu - Math.log(3)) * (k === 0 || k === parts ? 0.5 : 1);
      for (const reading of readings) {
        const [low, high] = ends(reading);
        weight *=
          low === high
            ? Math.exp(-0.5 * ((Math.log(low) - mu) / spread) ** 2) / spread
            : phi((Math.log(high) - mu) / spread) - phi((Math.log(low) - mu) / spread);
      }
      points.push({ mu, spread, weight });
    }
  }
  const total = points.reduce((sum, { weight }) => sum + weight, 0);
  const heavy = points.filter(({ weight }) => weight > 1e-9 * total);
  const at = (share: number): number => {
    let [low, high] = [-9, 9];
    for (let turn = 0; turn < 25; turn++) {
      const middle = (low + high) / 2;
      const below = heavy.reduce(
        (sum, { mu, spread, weight }) => sum + weight * phi((middle - mu) / spread),
        0,
      );
      [low, high] = below < share * total ? [middle, high] : [low, middle];
    }
    return Math.exp((low + high) / 2);
  };
  return { lowMm: at(0.025), medianMm: at(0.5), highMm: at(0.975) };
}
