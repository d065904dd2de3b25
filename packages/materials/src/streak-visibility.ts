import { type Cited, cited } from './cited.ts';
import { ciede2000, type Lab } from './colour-difference.ts';

/** Colour difference ΔE00 at which a streak counts as fully visible in the index. */
export const fullyVisibleDifference: Cited = cited(9, 'prior', 'own-prior');
/** Travel in mm over which the index rises by 1 − 1/e. */
export const indexScaleMm: Cited = cited(2, 'prior', 'own-prior');

/**
 * Colour of wood tinted by a share of resin colour, 0 to 1: on the straight line between them in L*a*b* (our
 * inference).
 */
export function streakColour(wood: Lab, resin: Lab, tintShare: number): Lab {
  const mix = (w: number, r: number): number => w + tintShare * (r - w);
  return [mix(wood[0], resin[0]), mix(wood[1], resin[1]), mix(wood[2], resin[2])];
}

/** Colour difference ΔE00 of a streak against the bare wood around it. */
export function streakDifference(wood: Lab, resin: Lab, tintShare: number): number {
  return ciede2000(wood, streakColour(wood, resin, tintShare));
}

/**
 * Bleed index 0 to 1 of a wall: 1 − exp(−m E V / 2), V = min(1, ΔE00/9). A rank, not a length.
 *
 * @param medianMm median travel along the fibres
 * @param exposure end-grain exposure of the wall, 0 to 1
 * @param difference ΔE00 of the streak
 */
export function bleedIndex(medianMm: number, exposure: number, difference: number): number {
  const visible = Math.min(1, difference / fullyVisibleDifference.value);
  return -Math.expm1((-medianMm * exposure * visible) / indexScaleMm.value);
}
