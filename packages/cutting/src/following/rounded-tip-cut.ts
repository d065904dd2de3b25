import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import { erodedArea, reachedArea } from '@pourproof/geometry';
import { contactSum } from '../cells/contact-sum.ts';
import type { ContactIntegrand } from '../cells/edge-cells.ts';
import { radiusAt } from '../cutters/cutter.ts';
import { widestClearance } from '../depth/widest-clearance.ts';
import type { Bounded } from '../integrals/adaptive-integral.ts';
import { type JoinedOutline, joinOutlines } from '../slices/join-outlines.ts';
import { reachedOutline } from '../slices/reached-outline.ts';
import type { Reach, StepCut } from '../slices/step-cut.ts';
import { climbedClearance } from './climbed-clearance.ts';
import { FollowingProfile } from './following-profile.ts';
import { sweptSlant, sweptVolume } from './volume/swept-volume.ts';

/**
 * What a climb along the axis may lose, as a share of half the width of the rounded tip (our choice): the
 * surface is uncertain by about that share of what the tip cuts.
 */
const CLIMB_SHARE = 0.05;
/**
 * Where between the upper bound (0) and the lower one (1) the volume is taken when the lower one is loose, as
 * for all tips but balls (our choice: about what sums over grids show).
 */
const LOOSE_BOUND_SHARE = 1 / 8;
/** Intervals of the height of a rounded tip at whose ends discs are joined for one outline. */
const TIP_STEPS = 8;
/**
 * Tolerance of all integrals of one measure together, relative to the whole: far below the gap between its
 * bounds.
 */
const ROUNDED_TIP_REL_TOL = 1e-7;

/**
 * What a following cutter with a rounded tip cuts. Exact where its flanks touch both walls, between parallel
 * walls and around a reflex vertex; close to the truth elsewhere, with an error bound.
 */
export class RoundedTipCut implements StepCut {
  readonly depthMm: number;
  readonly isExact = false;
  readonly profile: FollowingProfile;
  readonly #axis: MedialAxis;
  readonly #toleranceMm: number;
  readonly #areaMm2: number;
  readonly #widestMm: number;
  #climbed: Float64Array | undefined;
  #whole: Bounded | undefined;
  #lastJoined: (JoinedOutline & { readonly depthMm: number }) | undefined;

  constructor(axis: MedialAxis, profile: FollowingProfile, toleranceMm: number) {
    this.#axis = axis;
    this.profile = profile;
    this.depthMm = profile.depthMm;
    this.#toleranceMm = toleranceMm;
    this.#areaMm2 = erodedArea(axis, 0);
    this.#widestMm = widestClearance(axis);
  }

  get deepestMm(): number {
    return this.profile.tipDepth(this.#widestMm);
  }

  get edgeClearanceMm(): number {
    return this.profile.tipFlatMm;
  }

  /** All of the slice at the face; below it, the part reached from where the tip is at the depth limit. */
  reachAt(depthMm: number): Reach {
    const { tipFlatMm, reachMm, cutter } = this.profile;
    return depthMm === 0
      ? { centreMm: tipFlatMm, reachMm: tipFlatMm }
      : { centreMm: reachMm, reachMm: Math.min(reachMm, radiusAt(cutter, this.depthMm - depthMm)) };
  }

  sliceArea(depthMm: number): Bounded {
    const { profile } = this;
    if (depthMm === 0 || depthMm >= this.depthMm) {
      const { centreMm, reachMm } = this.reachAt(Math.min(depthMm, this.depthMm));
      return {
        value: reachMm === 0 ? erodedArea(this.#axis, centreMm) : reachedArea(this.#axis, centreMm, reachMm),
        error: 0,
      };
    }
    const { areaMm2: value, excessMm2 } = this.#joined(depthMm);
    // no centre cuts nearer to the wall than one with the greatest clearance
    const widest = Math.min(profile.reachMm, Math.max(this.#widestMm, radiusAt(profile.cutter, depthMm)));
    const most = erodedArea(this.#axis, Math.max(0, widest - profile.radiusBelow(widest, depthMm)));
    return { value, error: Math.max(most - value, excessMm2) };
  }

  /**
   * Joined from what discs of several sizes reach: inside the slice, by at most a few hundredths of the tip's
   * radius.
   */
  sliceOutline(depthMm: number): ArcRings {
    const { tipFlatMm } = this.profile;
    return depthMm === 0 ? reachedOutline(this.#axis, tipFlatMm, tipFlatMm) : this.#joined(depthMm).outline;
  }

  sliceExcess(depthMm: number): number {
    return depthMm === 0 ? 0 : this.#joined(depthMm).excessMm2;
  }

  #joined(depthMm: number): JoinedOutline {
    if (this.#lastJoined?.depthMm !== depthMm) {
      const { cutter, reachMm, flankHeightMm } = this.profile;
      const highest = Math.min(flankHeightMm, this.depthMm - depthMm);
      const outlines: ArcRings[] = [];
      for (let k = 0; k <= TIP_STEPS; k++) {
        // closer at the tip, where the radius grows fastest
        const height = highest * (k / TIP_STEPS) ** 2;
        const centreMm = Math.min(reachMm, radiusAt(cutter, depthMm + height));
        outlines.push(reachedOutline(this.#axis, centreMm, Math.min(centreMm, radiusAt(cutter, height))));
      }
      this.#lastJoined = { depthMm, ...joinOutlines(outlines, this.#toleranceMm) };
    }
    return this.#lastJoined;
  }

  volumeBetween(topMm: number, bottomMm: number): Bounded {
    if (topMm > 0 || bottomMm < this.depthMm) {
      return this.#between(topMm, bottomMm, (cut) => cut.volumeBetween(0, cut.depthMm));
    }
    this.#whole ??= this.#wholeVolume();
    return this.#whole;
  }

  /** Difference of a measure between two depth limits: above a limit, a deeper cut has the same slices. */
  #between(topMm: number, bottomMm: number, measure: (cut: RoundedTipCut) => Bounded): Bounded {
    const downTo = (depthMm: number): Bounded =>
      depthMm > 0
        ? measure(
            new RoundedTipCut(
              this.#axis,
              new FollowingProfile(this.profile.cutter, depthMm),
              this.#toleranceMm,
            ),
          )
        : { value: 0, error: 0 };
    const [low, high] = [downTo(topMm), downTo(Math.min(bottomMm, this.depthMm))];
    return { value: high.value - low.value, error: high.error + low.error };
  }

  /** Area of the walls, mm²; its error is an estimate, not a bound: see {@link sweptSlant}. */
  wallBetween(topMm: number, bottomMm: number): Bounded {
    if (topMm > 0 || bottomMm < this.depthMm) {
      return this.#between(topMm, bottomMm, (cut) => cut.wallBetween(0, cut.depthMm));
    }
    const { profile } = this;
    const own = this.#ownSum(profile.tipFlatMm, this.#areaMm2, {
      segment: (h) => profile.slantMm(h),
      vertex: (h) => profile.slantVertexMm2(h),
      kinks: profile.kinksMm,
    });
    const { value, error } = sweptSlant(this.#axis, profile, ROUNDED_TIP_REL_TOL * this.#areaMm2);
    return { value: own + value, error };
  }

  /** Clearance that the cutter uses at the contacts of an axis edge: that at the top of the climb from it. */
  centreFor(edge: number): Centre {
    const { reachMm } = this.profile;
    const top = Math.min(reachMm, this.#climbTop(edge));
    return top > 0 ? () => top : (h) => Math.min(h, reachMm);
  }

  /** Taken between two bounds, see {@link sweptVolume}; exact at clearances of `reachMm` or more. */
  #wholeVolume(): Bounded {
    const { profile } = this;
    const whole = this.#areaMm2 * profile.tipDepth(this.#widestMm);
    const integrand: ContactIntegrand = {
      segment: (h) => profile.segmentMm2(h),
      vertex: (h) => profile.vertexMm3(h),
      kinks: profile.kinksMm,
    };
    const own = this.#ownSum(profile.tipFlatMm, whole, integrand);
    const wide = this.#ownSum(profile.reachMm, whole, integrand);
    const swept = sweptVolume(this.#axis, profile, ROUNDED_TIP_REL_TOL * whole);
    const upper = swept.upperMm3 + wide;
    const lower = swept.gainMm3 + own;
    const share = profile.ballMm === undefined ? LOOSE_BOUND_SHARE : 0.5;
    const error =
      (1 - share) * Math.abs(upper - lower) + swept.integralErrorMm3 + ROUNDED_TIP_REL_TOL * whole;
    return { value: upper + share * (lower - upper), error };
  }

  #climbTop(edge: number): number {
    this.#climbed ??= climbedClearance(this.#axis, CLIMB_SHARE * this.profile.flankFromMm);
    return this.#climbed[edge];
  }

  #ownSum(least: number, whole: number, own: ContactIntegrand): number {
    return contactSum(this.#axis, least, ROUNDED_TIP_REL_TOL * whole, () => own);
  }
}

/** Clearance that the cutter uses, as a function of that at the contact. */
type Centre = (clearance: number) => number;
