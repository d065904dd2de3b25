import { type Cited, cited } from './cited.ts';

/**
 * Share of end grain that is open vessel: a bundle of tubes; measured flow says that most of it is not
 * connected.
 */
export const openVesselShare: Cited = cited(0.37, 'inference', 'own-inference', 'siau-1984');

/**
 * Upper bound in ml on resin drawn into end grain: exposed area × travel × open share. Treat anything from 0
 * to this as possible.
 *
 * @param exposedMm2 end-grain area of walls and floor, ∫ E dA
 * @param travelMm median travel along the fibres
 */
export function endGrainUptakeMl(exposedMm2: number, travelMm: number): number {
  return (exposedMm2 * travelMm * openVesselShare.value) / 1000;
}
