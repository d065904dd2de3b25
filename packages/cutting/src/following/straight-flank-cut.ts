import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import { AxisEdge, erodedArea, reachedArea, vVolume } from '@pourproof/geometry';
import { contactSum } from '../cells/contact-sum.ts';
import { EdgeCells } from '../cells/edge-cells.ts';
import { profileChords } from '../cutters/profile-chords.ts';
import { widestClearance } from '../depth/widest-clearance.ts';
import type { Bounded } from '../integrals/adaptive-integral.ts';
import { reachedOutline } from '../slices/reached-outline.ts';
import type { Reach, StepCut } from '../slices/step-cut.ts';
import { FollowingProfile } from './following-profile.ts';
import { overlapBound } from './overlap-bound.ts';
import { halfSweepArea, tipSurfaces } from './tip-surfaces.ts';

/** Tolerance of all integrals of one measure together, relative to artwork area (times depth): rounding. */
const STRAIGHT_FLANK_REL_TOL = 1e-12;
/**
 * How much of what discs share at most is taken off (our choice: about what integrals of the discs themselves give for lettering, a thirtieth to a
 * sixth).
 */
const SHARED_SHARE = 1 / 8;
/**
 * Error of what a flat tip sweeps along curved axis edges, each taken as four chords (observed: far less).
 */
const SWEEP_CHORD_REL_TOL = 0.01;

/**
 * What a following cutter with straight flanks and a pointed or flat tip cuts. Its slice at a depth is the
 * artwork eroded by what the flanks widen from there up to the face, then opened by the flat of the tip.
 */
export class StraightFlankCut implements StepCut {
  readonly depthMm: number;
  readonly isExact = true;
  readonly profile: FollowingProfile;
  readonly #axis: MedialAxis;
  #whole: Bounded | undefined;

  constructor(axis: MedialAxis, profile: FollowingProfile) {
    this.#axis = axis;
    this.profile = profile;
    this.depthMm = profile.depthMm;
  }

  get deepestMm(): number {
    return this.profile.tipDepth(widestClearance(this.#axis));
  }

  get edgeClearanceMm(): number {
    return this.profile.tipFlatMm;
  }

  reachAt(depthMm: number): Reach {
    const { tipFlatMm, reachMm, slope } = this.profile;
    const inset = Math.min(depthMm * slope, reachMm - tipFlatMm);
    return { centreMm: tipFlatMm + inset, reachMm: tipFlatMm };
  }

  sliceArea(depthMm: number): Bounded {
    const { centreMm, reachMm } = this.reachAt(depthMm);
    const value =
      reachMm === 0 ? erodedArea(this.#axis, centreMm) : reachedArea(this.#axis, centreMm, reachMm);
    return { value, error: 0 };
  }

  sliceOutline(depthMm: number): ArcRings {
    const { centreMm, reachMm } = this.reachAt(depthMm);
    return reachedOutline(this.#axis, centreMm, reachMm);
  }

  sliceExcess(): number {
    return 0;
  }

  volumeBetween(topMm: number, bottomMm: number): Bounded {
    if (topMm > 0 || bottomMm < this.depthMm) {
      const [low, high] = [this.#downTo(topMm), this.#downTo(Math.min(bottomMm, this.depthMm))];
      return { value: high.value - low.value, error: high.error + low.error };
    }
    this.#whole ??= this.profile.tipFlatMm === 0 ? this.#pointedVolume() : this.#bluntVolume();
    return this.#whole;
  }

  /** Area of the walls between two depths, mm², with what a flat tip leaves along the axis. */
  wallBetween(topMm: number, bottomMm: number): Bounded {
    const { profile } = this;
    const { slope, tipFlatMm } = profile;
    const steepness = Math.hypot(1, slope) / slope;
    if (tipFlatMm === 0) {
      const planMm2 = this.sliceArea(topMm).value - this.sliceArea(bottomMm).value;
      return { value: planMm2 * steepness, error: 0 };
    }
    const depths = [topMm, bottomMm] as const;
    const [flank] = profileChords(profile.cutter, this.depthMm, 1).filter((chord) => chord.toHeightMm > 0);
    const span = (h: number): readonly [number, number] =>
      profile.chordSpan(flank, h, Math.min(h, profile.reachMm), depths);
    const of = {
      segment: (h: number) => Math.max(0, span(h)[1] - span(h)[0]),
      vertex: (h: number) => Math.max(0, span(h)[1] ** 2 - span(h)[0] ** 2) / 2,
      kinks: [tipFlatMm + topMm * slope, tipFlatMm + bottomMm * slope, profile.reachMm],
    };
    const tolerance = STRAIGHT_FLANK_REL_TOL * erodedArea(this.#axis, 0);
    const flankMm2 = contactSum(this.#axis, tipFlatMm, tolerance, () => of) * steepness;
    const { sweeps, rests, share } = tipSurfaces(this.#axis, profile, depths);
    const swept = sweeps.reduce((sum, sweep) => sum + 2 * share * halfSweepArea(sweep, tipFlatMm), 0);
    const rested = rests.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
    // curved axis edges count as four chords each
    return { value: flankMm2 + swept + rested, error: SWEEP_CHORD_REL_TOL * swept };
  }

  /** Volume down to a depth: that of the same cutter with this depth limit. */
  #downTo(depthMm: number): Bounded {
    return depthMm > 0
      ? new StraightFlankCut(this.#axis, new FollowingProfile(this.profile.cutter, depthMm)).volumeBetween(
          0,
          depthMm,
        )
      : { value: 0, error: 0 };
  }

  #pointedVolume(): Bounded {
    const { slope, depthMm } = this.profile;
    return { value: vVolume(this.#axis, { includedRad: 2 * Math.atan(slope), depthMm }), error: 0 };
  }

  #bluntVolume(): Bounded {
    const { profile } = this;
    const { tipFlatMm, reachMm, slope } = profile;
    const of = {
      segment: (h: number) => profile.segmentMm2(h),
      vertex: (h: number) => profile.vertexMm3(h),
      kinks: [reachMm],
    };
    const tolerance = STRAIGHT_FLANK_REL_TOL * erodedArea(this.#axis, 0) * this.depthMm;
    const own = contactSum(this.#axis, tipFlatMm, tolerance, () => of);
    // the discs at level crossings count in full: what they share is between nothing and this
    const shared = overlapBound(this.#axis, tipFlatMm, reachMm) / slope;
    const value = own + this.#tipSectors(tolerance) - SHARED_SHARE * shared;
    return { value, error: (1 - SHARED_SHARE) * shared };
  }

  /** Volume of the sectors by which a flat tip reaches into narrow parts, over all depths, mm³. */
  #tipSectors(tolerance: number): number {
    const { tipFlatMm: flat, reachMm, slope } = this.profile;
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const edge = new AxisEdge(this.#axis);
    const cells = new EdgeCells(this.#axis, edge);
    const weight = (flat * flat) / (2 * slope);
    const ofEach = tolerance / (weight * Math.max(1, edgeFrom.length));
    let sum = 0;
    for (let e = 0; e < edgeFrom.length; e++) {
      const low = Math.max(nodeR[edgeFrom[e]], flat);
      const high = Math.min(nodeR[edgeTo[e]], reachMm);
      if (high > low && !edge.isSecondary(e)) {
        edge.load(e);
        sum += cells.sweepIntegral(low, high, ofEach);
      }
    }
    return sum * weight;
  }
}
