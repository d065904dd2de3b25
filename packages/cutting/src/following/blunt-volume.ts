import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge, erodedArea } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { contactSum } from '../cells/contact-sum.ts';
import { EdgeCells } from '../cells/edge-cells.ts';
import type { Bounded } from '../integrals/adaptive-integral.ts';
import type { FollowingProfile } from './following-profile.ts';
import { overlapBound } from './overlap-bound.ts';

/** Tolerance of all integrals of one measure together, relative to artwork area (times depth): rounding. */
export const STRAIGHT_FLANK_REL_TOL = 1e-12;
/**
 * How much of what discs share at most is taken off (our choice: about what integrals of the discs themselves give for lettering, a thirtieth to a
 * sixth).
 */
const SHARED_SHARE = 1 / 8;

/**
 * Volume that a following cutter with straight flanks and a flat tip cuts, mm³: of the contacts that it reaches, and of the sectors by which its
 * tip reaches into narrow parts. Sectors that overlap count twice there: what they share lies between nothing and a bound.
 */
export function bluntVolume(axis: MedialAxis, profile: FollowingProfile): Bounded {
  const { tipFlatMm, reachMm, slope, depthMm } = profile;
  const of = {
    segment: (h: number) => profile.segmentMm2(h),
    vertex: (h: number) => profile.vertexMm3(h),
    kinks: [reachMm],
  };
  const tolerance = STRAIGHT_FLANK_REL_TOL * erodedArea(axis, 0) * depthMm;
  const own = contactSum(axis, tipFlatMm, tolerance, () => of);
  const shared = overlapBound(axis, tipFlatMm, reachMm) / slope;
  const value = own + tipSectors(axis, profile, tolerance) - SHARED_SHARE * shared;
  return { value, error: (1 - SHARED_SHARE) * shared };
}

/** Volume of the sectors by which a flat tip reaches into narrow parts, over all depths, mm³. */
function tipSectors(
  axis: MedialAxis,
  { tipFlatMm: flat, reachMm, slope }: FollowingProfile,
  tolerance: number,
): number {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const cells = new EdgeCells(axis, edge);
  const weight = (flat * flat) / (2 * slope);
  const ofEach = tolerance / (weight * Math.max(1, edgeFrom.length));
  let sum = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    const low = Math.max(nodeR[edgeFrom[e]], flat);
    const high = Math.min(nodeR[edgeTo[e]], reachMm);
    if (high > low && !edge.isSecondary(e)) {
      edge.load(e);
      sum += cells.sweepIntegral(low, high, ofEach);
    }
  }
  return sum * weight;
}
