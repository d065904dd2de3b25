import { type Cited, cited } from './cited.ts';

/** Thermal diffusivity of epoxy in m²/s. */
export const thermalDiffusivityM2PerS: Cited = cited(1.07e-7, 'memory', 'from-memory');
/** Heat of cure in J/g. */
export const heatOfCureJPerG: Cited = cited(400, 'memory', 'from-memory');
/** Heat capacity in J/(g·K). */
export const heatCapacityJPerGK: Cited = cited(1.8, 'memory', 'from-memory');

/** How a depth is poured. */
export interface PourLayers {
  readonly count: number;
  /** Depth of each layer in mm; all are equal. */
  readonly eachMm: number;
}

/**
 * Returns the fewest equal layers that keep each within the deepest pour of the resin.
 *
 * A depth of 0 needs none.
 * @throws {RangeError} when the depth is negative or the limit is not above 0
 */
export function pourLayers(depthMm: number, deepestPourMm: number): PourLayers {
  if (!(depthMm >= 0) || !(deepestPourMm > 0)) {
    throw new RangeError(`depthMm ${depthMm} must be 0 or more and deepestPourMm ${deepestPourMm} above 0.`);
  }
  // a depth that is a multiple up to rounding does not earn another layer
  const count = Math.ceil(depthMm / deepestPourMm - 1e-9);
  return count === 0 ? { count: 0, eachMm: 0 } : { count, eachMm: depthMm / count };
}

/** Time in seconds in which the heat of a layer escapes through its depth: d²/α. Long against the gel time means a hot pour. */
export function heatEscapeSeconds(depthMm: number): number {
  return (depthMm / 1000) ** 2 / thermalDiffusivityM2PerS.value;
}

/** Rise in kelvin if no heat of cure escapes: the worst that a full cup can do. */
export function adiabaticRiseK(): number {
  return heatOfCureJPerG.value / heatCapacityJPerGK.value;
}
