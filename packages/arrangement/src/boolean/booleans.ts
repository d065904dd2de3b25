import type { CleanRegion, FillRule, Region } from '@pourproof/plane';
import { arrange } from '../resolve/arrange.ts';
import { cleanRegionFrom } from '../resolve/clean-region-from.ts';
import { joinedRings } from '../resolve/joined-rings.ts';
import { labelSides } from '../resolve/label-sides.ts';

/** How two regions are combined. */
export type BooleanOperation = 'union' | 'intersect' | 'subtract' | 'xor';

const KEEPS: Readonly<Record<BooleanOperation, readonly [boolean, boolean, boolean, boolean]>> = {
  union: [false, true, true, true],
  intersect: [false, false, false, true],
  subtract: [false, true, false, false],
  xor: [false, true, true, false],
};

/**
 * The clean region, in mm, of the points in a or b, in both, in a but not in b, or in exactly one of them.
 *
 * Points nearer to each other than half of `RESOLVE_GRID_MM` count as one, so regions that share an edge join
 * without a seam.
 *
 * @example
 * const square = (x) => ({ ...packRings([[x, 0, x + 10, 0, x + 10, 10, x, 10]]), fillRule: 'nonzero' });
 * const [a, b] = [0, 5].map((x) => resolveRegions([square(x)]).region);
 * signedArea(booleans(a, b, 'intersect')); // 50
 */
export function booleans(a: CleanRegion, b: CleanRegion, operation: BooleanOperation): CleanRegion {
  const filled = (region: CleanRegion): Region => ({ ...region, fillRule: 'nonzero' });
  return combineShapes([filled(a)], [filled(b)], operation);
}

/**
 * A boolean of drawn shapes in one sweep: `a` and `b` each stand for the union of their shapes, each shape
 * filled by its own rule, so that nothing need be resolved beforehand. Either list may be empty.
 *
 * @throws {RangeError} when a coordinate is not finite
 * @throws {CrossingsError} when more than `MAX_CROSSINGS` crossings are found
 */
export function combineShapes(
  a: readonly Region[],
  b: readonly Region[],
  operation: BooleanOperation,
): CleanRegion {
  const { rings, shapeOfEdge } = joinedRings([...a, ...b]);
  const arrangement = arrange(rings, shapeOfEdge, () => () => undefined);
  const sides = labelSides(arrangement, {
    shapeOfEdge,
    fillRules: [...a, ...b].map((shape): FillRule => shape.fillRule),
    groupOfShape: Uint8Array.from([...a.map(() => 0), ...b.map(() => 1)]),
    keeps: KEEPS[operation],
  });
  return cleanRegionFrom(arrangement, sides).region;
}
