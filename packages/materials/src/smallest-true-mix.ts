import { type Cited, cited } from './cited.ts';

/** Diameter in mm of the smallest cups that resin is usually stirred in. */
export const smallCupMm: Cited = cited(35, 'practice', 'common-practice');
/** Film in mm that stays unmixed on wall and floor of a cup that is scraped: half of a brushed coat. */
export const unmixedFilmMm: Cited = cited(0.05, 'inference', 'own-inference');

/**
 * Smallest mix in g that can be stirred true: of less, the film that clings to a small cup is a larger share than the ratio may be off by.
 *
 * A film t on the floor and on the wall of a cup of diameter D, filled to h, is the share t (4/D + 1/h) of the mix.
 *
 * @param tolerancePct how far the ratio may be off
 * @param densityGPerMl density of the mix
 * @throws {RangeError} where even a full cup leaves that share on its wall
 */
export function smallestTrueMixG(tolerancePct: number, densityGPerMl: number): number {
  const diameterMm = smallCupMm.value;
  const perMm = tolerancePct / 100 / unmixedFilmMm.value - 4 / diameterMm;
  if (!(perMm > 0)) {
    throw new RangeError(`a tolerance of ${tolerancePct} % is less than the film on the wall of a cup`);
  }
  return (densityGPerMl * (Math.PI / 4) * diameterMm ** 2) / perMm / 1000;
}
