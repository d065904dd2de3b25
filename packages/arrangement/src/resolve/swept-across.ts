import { type CleanRegion, packRings, type Rings, ringStart } from '@pourproof/plane';
import { resolveRegions } from './resolve-regions.ts';

/**
 * A clean region resolved again by a sweep along y instead of x. The sweep along x does not meet what lies
 * within the tolerance of an edge nearly parallel to y but past its end in x, and may leave seams there that
 * are thinner than rounding. This removes them.
 */
export function sweptAcross(region: CleanRegion): CleanRegion {
  const { region: across } = resolveRegions([{ ...transposed(region), fillRule: 'nonzero' }]);
  // edges that meet in common ends only still do when mirrored
  return transposed(across) as CleanRegion;
}

/** The rings mirrored at the diagonal and reversed, so that areas keep their signs. */
function transposed(rings: Rings): Rings {
  const { coords, ringEnds } = rings;
  return packRings(
    Array.from(ringEnds, (end, k) => {
      const ring: number[] = [];
      for (let i = end - 1; i >= ringStart(rings, k); i--) {
        ring.push(coords[2 * i + 1], coords[2 * i]);
      }
      return ring;
    }),
  );
}
