import { type CleanRegion, packRings, type Rings, ringStart } from '@pourproof/plane';
import { resolveRegions } from './resolve-regions.ts';

/**
 * A clean region resolved once more by a sweep along y instead of x. What lies beside an edge nearly along y, but past its end in x, is not met by the
 * sweep along x though it is within the tolerance: seams thinner than rounding may be left there. This takes them out.
 */
export function sweptAcross(region: CleanRegion): CleanRegion {
  const { region: across } = resolveRegions([{ ...transposed(region), fillRule: 'nonzero' }]);
  // a mirror image of what edges meet in common ends only is so too
  return transposed(across) as CleanRegion;
}

/** Rings mirrored at the diagonal, each walked the other way, so that areas keep their signs. */
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
