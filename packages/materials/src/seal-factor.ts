import { type Cited, cited } from './cited.ts';
import { cureSpeed } from './resin-flow.ts';
import type { SealCurePoint, Sealer } from './sealer.ts';

/** Weight of each coat after the first in the logarithm of the factor: half as much, on the cautious side. */
export const laterCoatWeight: Cited = cited(0.5, 'inference', 'own-inference');

/**
 * Share of the unsealed travel that a seal leaves, 0 to 1.
 *
 * Hours of a coat that hardens by reaction count as hours at 25 °C (cure doubles every 10 °C). Between two
 * points of the sealer's curve ln(factor) is linear in ln(hours); before the first point ln(factor) is linear
 * in hours from 1 at 0 h; after the last point it stays. Each coat after the first counts half in ln(factor).
 * @throws {RangeError} when coats is not a whole number from 0, or hours are negative
 */
export function sealFactor(sealer: Sealer, coats: number, hours: number, temperatureC: number): number {
  if (!(Number.isInteger(coats) && coats >= 0)) {
    throw new RangeError(`coats is ${coats}; it must be a whole number from 0.`);
  }
  if (!(hours >= 0)) {
    throw new RangeError(`sealHours is ${hours}; it must be 0 or more.`);
  }
  if (coats === 0 || sealer.curve.value.length === 0) {
    return 1;
  }
  const effectiveHours = sealer.hardens === 'reaction' ? hours * cureSpeed(temperatureC) : hours;
  const one = oneCoatFactor(sealer.curve.value, effectiveHours);
  return coats === 1 ? one : one ** (1 + laterCoatWeight.value * (coats - 1));
}

function oneCoatFactor(curve: readonly SealCurePoint[], hours: number): number {
  let before: SealCurePoint = { hours: 0, factor: 1 };
  for (const point of curve) {
    if (hours < point.hours) {
      const share =
        before.hours === 0
          ? hours / point.hours
          : Math.log(hours / before.hours) / Math.log(point.hours / before.hours);
      return before.factor ** (1 - share) * point.factor ** share;
    }
    before = point;
  }
  return before.factor;
}
