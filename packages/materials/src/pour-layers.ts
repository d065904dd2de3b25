/** How a depth is poured. */
export interface PourLayers {
  readonly count: number;
  /** Depth of each layer in mm; all are equal. */
  readonly eachMm: number;
}

/**
 * Rounding of a depth that is a whole number of layers, which does not earn another one; share of a layer.
 */
const LAYER_REL_TOL = 1e-9;

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
  const count = Math.ceil(depthMm / deepestPourMm - LAYER_REL_TOL);
  return count === 0 ? { count: 0, eachMm: 0 } : { count, eachMm: depthMm / count };
}
