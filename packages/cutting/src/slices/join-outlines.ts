import { booleans, resolveRegions } from '@pourproof/arrangement';
import { type ArcRings, arcRingsArea, polygonFromArcs } from '@pourproof/geometry';
import { perimeter, RESOLVE_GRID_MM, type Rings, signedArea } from '@pourproof/plane';

/** Several outlines as one, with chords for arcs, and how far its area may be from that of their true union. */
export interface JoinedOutline {
  readonly outline: ArcRings;
  readonly areaMm2: number;
  /** What chords of arcs that bulge outwards leave out, mm²: at most so much more the union has. */
  readonly shortMm2: number;
  /** What chords of arcs that bulge inwards take in, mm²: at most so much less it has. */
  readonly excessMm2: number;
}

/** The union of several outlines, arcs flattened within `toleranceMm`; no rings for none. */
export function joinOutlines(outlines: readonly ArcRings[], toleranceMm: number): JoinedOutline {
  let shortMm2 = 0;
  let excessMm2 = 0;
  const regions = outlines.map((outline) => {
    // the region lies on the left of all its rings, as seen with y up
    const outwards = { ...outline, bulges: outline.bulges.map((bulge) => Math.max(0, bulge)) };
    const inwards = { ...outline, bulges: outline.bulges.map((bulge) => Math.min(0, bulge)) };
    shortMm2 += arcRingsArea(outwards) - signedArea(polygonFromArcs(outwards, toleranceMm));
    excessMm2 += signedArea(polygonFromArcs(inwards, toleranceMm)) - arcRingsArea(inwards);
    return resolveRegions([{ ...polygonFromArcs(outline, toleranceMm), fillRule: 'nonzero' }]).region;
  });
  const rings: Rings =
    regions.length === 0
      ? { coords: new Float64Array(), ringEnds: new Uint32Array() }
      : regions.reduce((sum, region) => booleans(sum, region, 'union'));
  // points that lie within half a grid of each other count as one
  const snapped = RESOLVE_GRID_MM * perimeter(rings);
  return {
    outline: {
      coords: rings.coords,
      ringEnds: rings.ringEnds,
      bulges: new Float64Array(rings.coords.length / 2),
    },
    areaMm2: signedArea(rings),
    shortMm2: Math.max(0, shortMm2) + snapped,
    excessMm2: Math.max(0, excessMm2) + snapped,
  };
}
