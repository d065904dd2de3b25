import { type CleanRegion, packRings, pollStep, ringArea } from '@pourproof/plane';
import type { Arrangement } from './arrange.ts';
import { traceRings } from './trace-rings.ts';

/**
 * The clean region bounded by the marked sides of an arrangement, and how many rings were dropped because
 * they are smaller than the tolerance squared.
 */
export function cleanRegionFrom(
  arrangement: Arrangement,
  sides: Int8Array,
): { readonly region: CleanRegion; readonly slivers: number } {
  const { x, y } = arrangement.segments.vertices;
  const limit = arrangement.toleranceMm * arrangement.toleranceMm;
  const rings: Float64Array[] = [];
  let slivers = 0;
  for (const ring of traceRings(arrangement, sides)) {
    const coords = new Float64Array(2 * ring.length);
    for (let i = 0; i < ring.length; i++) {
      pollStep();
      coords[2 * i] = x[ring[i]];
      coords[2 * i + 1] = y[ring[i]];
    }
    if (Math.abs(ringArea(coords)) < limit) {
      slivers++;
    } else {
      rings.push(coords);
    }
  }
  // the brand is given here only: the sweep has proven that edges meet in common ends only
  return { region: packRings(rings) as CleanRegion, slivers };
}
