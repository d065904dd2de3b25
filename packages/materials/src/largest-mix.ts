import type { Resin } from './resin.ts';
import { cureSpeed } from './resin-flow.ts';

/** Mass grows with the cube of size, and the size that still sheds its heat with the root of the time to gel. */
const MASS_BY_TIME = 1.5;

/**
 * Most of a resin in g that may be mixed in one cup at a shop temperature.
 *
 * The heat of cure leaves a cup through its wall: the largest that does not run away scales with the square root of the gel time
 * (Frank-Kamenetskii's criterion, from memory), its mass therefore with the power 3/2. A cold shop is given no more than the class allows.
 */
export function largestMixG(resin: Resin, temperatureC: number): number {
  return resin.largestMixG.value * Math.min(1, cureSpeed(temperatureC) ** -MASS_BY_TIME);
}
