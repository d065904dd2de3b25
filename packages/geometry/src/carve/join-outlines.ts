import { booleans } from '../boolean/booleans.ts';
import { type ArcRings, polygonFromArcs } from '../outline/arc-rings.ts';
import { resolveRegions } from '../resolve/resolve-regions.ts';

/** The union of several outlines as one, arcs flattened within `toleranceMm`; no rings for none. */
export function joinOutlines(outlines: readonly ArcRings[], toleranceMm: number): ArcRings {
  const regions = outlines.map((outline) => {
    const rings = polygonFromArcs(outline, toleranceMm);
    return resolveRegions([{ ...rings, fillRule: 'nonzero' }]).region;
  });
  const rings =
    regions.length === 0
      ? { coords: new Float64Array(), ringEnds: new Uint32Array() }
      : regions.reduce((sum, region) => booleans(sum, region, 'union'));
  return {
    coords: rings.coords,
    ringEnds: rings.ringEnds,
    bulges: new Float64Array(rings.coords.length / 2),
  };
}
