import { booleans, resolveRegions } from '@pourproof/arrangement';
import { type ArcRings, arcRingsArea, polygonFromArcs } from '@pourproof/geometry';
import { perimeter, RESOLVE_GRID_MM, type Rings, signedArea } from '@pourproof/plane';

/** The union of several outlines with chords for arcs, and how far its area may be from the true one. */
export interface JoinedOutline {
  readonly outline: ArcRings;
  readonly areaMm2: number;
  /** Area that chords of convex arcs leave out, mm²: the true union has at most so much more. */
  readonly shortMm2: number;
  /** Area that chords of concave arcs add, mm²: the true union has at most so much less. */
  readonly excessMm2: number;
}

/** Joins several outlines, their arcs flattened within `toleranceMm`; no rings for no outlines. */
export function joinOutlines(outlines: readonly ArcRings[], toleranceMm: number): JoinedOutline {
  let shortMm2 = 0;
  let excessMm2 = 0;
  const regions = outlines.map((outline) => {
    // with y up, a region lies to the left of all its rings, so a positive bulge is convex
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
  // resolving snaps points to its grid
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
