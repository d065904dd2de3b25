import { type CleanRegion, packRings, ringCoords } from '@pourproof/plane';
import { arrange } from '../resolve/arrange.ts';
import { cleanRegionFrom } from '../resolve/clean-region-from.ts';
import { labelSides } from '../resolve/label-sides.ts';

/** How two regions are joined. */
export type BooleanOperation = 'union' | 'intersect' | 'subtract' | 'xor';

const KEEPS: Readonly<Record<BooleanOperation, readonly [boolean, boolean, boolean, boolean]>> = {
  union: [false, true, true, true],
  intersect: [false, false, false, true],
  subtract: [false, true, false, false],
  xor: [false, true, true, false],
};

/**
 * The clean region in mm that is in a or b, in both, in a but not in b, or in one of them only.
 *
 * Points nearer to each other than half of `RESOLVE_GRID_MM` count as one, so regions that share an edge join without a seam.
 */
export function booleans(a: CleanRegion, b: CleanRegion, operation: BooleanOperation): CleanRegion {
  const list: Float64Array[] = [];
  for (const region of [a, b]) {
    for (let k = 0; k < region.ringEnds.length; k++) {
      list.push(ringCoords(region, k));
    }
  }
  const rings = packRings(list);
  const shapeOfEdge = new Uint32Array(rings.coords.length / 2);
  shapeOfEdge.fill(1, a.ringEnds.length === 0 ? 0 : a.ringEnds[a.ringEnds.length - 1]);
  const arrangement = arrange(rings, shapeOfEdge, () => () => undefined);
  const sides = labelSides(arrangement, {
    shapeOfEdge,
    fillRules: ['nonzero', 'nonzero'],
    groupOfShape: Uint8Array.of(0, 1),
    keeps: KEEPS[operation],
  });
  return cleanRegionFrom(arrangement, sides).region;
}
