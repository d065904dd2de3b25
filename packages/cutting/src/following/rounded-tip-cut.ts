import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import { erodedArea, reachedArea } from '@pourproof/geometry';
import { contactSum } from '../cells/contact-sum.ts';
import type { ContactIntegrand } from '../cells/edge-cells.ts';
import { radiusAt } from '../cutters/cutter.ts';
import type { Bounded } from '../integrals/adaptive-integral.ts';
import { type JoinedOutline, joinOutlines } from '../slices/join-outlines.ts';
import { reachedOutline } from '../slices/reached-outline.ts';
import type { Reach, StepCut } from '../slices/step-cut.ts';
import { climbedClearance } from './climbed-clearance.ts';
import { FollowingProfile } from './following-profile.ts';
import { sweptSlant, sweptVolume } from './volume/swept-volume.ts';

/** Loss allowed on a climb along the axis, as a share of the half width of the rounded tip: what that leaves in doubt is about so much of what the tip cuts. */
const CLIMB_SHARE = 0.05;
/** How far from the upper towards the lower bound of a volume its value lies where the lower one is loose, as on all tips but balls (our choice: about what sums over grids show). */
const LOOSE_SHARE = 1 / 8;
/** Heights in the rounded tip whose discs are joined for one outline. */
const TIP_STEPS = 8;
/** Share of the whole that all integrals of one measure together may be off: far below what the tip leaves in doubt. */
const INTEGRAL_SHARE = 1e-7;

/**
 * What a cutter with a rounded tip cuts that goes everywhere as deep as its flanks and the depth limit allow. Where its flanks touch both walls the cut
 * is exact; what the tip leaves is exact between parallel walls and around a reflex point and close to the truth elsewhere. Bounds
 * hold everywhere.
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
    this.#widestMm = axis.nodeR.reduce((most, r) => Math.max(most, r), 0);
  }

  get edgeClearanceMm(): number {
    return this.profile.tipFlatMm;
  }

  /** A part of the slice: at the face all of it, below what is reached from where the tip is deepest. */
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
    // no centre anywhere reaches nearer to the wall than one with the greatest clearance
    const widest = Math.min(profile.reachMm, Math.max(this.#widestMm, radiusAt(profile.cutter, depthMm)));
    const most = erodedArea(this.#axis, Math.max(0, widest - profile.radiusBelow(widest, depthMm)));
    return { value, error: Math.max(most - value, excessMm2) };
  }

  /** Joined from what discs of several sizes reach: inside the slice, which is never more than that by a few hundredths of the tip's radius. */
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
        // heights crowd at the tip, where its radius grows fastest
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
      return this.#between(topMm, bottomMm, (layer) => layer.volumeBetween(0, layer.depthMm));
    }
    this.#whole ??= this.#wholeVolume();
    return this.#whole;
  }

  /** What a measure of the cut with a depth limit gains from one limit to the other: the slices of a deeper cut above a limit are the same. */
  #between(topMm: number, bottomMm: number, measure: (layer: RoundedTipCut) => Bounded): Bounded {
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

  /** Area of the walls; the error is an estimate, no bound: see {@link sweptSlant}. */
  wallBetween(topMm: number, bottomMm: number): Bounded {
    if (topMm > 0 || bottomMm < this.depthMm) {
      return this.#between(topMm, bottomMm, (layer) => layer.wallBetween(0, layer.depthMm));
    }
    const { profile } = this;
    const integrand = (z: Centre): ContactIntegrand => ({
      strip: (h) => profile.slantMm(h, z(h)),
      fan: (h) => profile.slantFanMm2(h, z(h)),
      kinks: this.#kinks(0),
    });
    const own = this.#ownSum(profile.tipFlatMm, this.#areaMm2, integrand);
    const { value, error } = sweptSlant(this.#axis, profile, INTEGRAL_SHARE * this.#areaMm2);
    return { value: own + value, error };
  }

  /** Clearance that the cutter uses at contacts of an axis edge: of the place to which a climb leads. */
  centreFor(edge: number): Centre {
    const { reachMm } = this.profile;
    const top = Math.min(reachMm, this.#climbTop(edge));
    return top > 0 ? () => top : (h) => Math.min(h, reachMm);
  }

  /** Between two bounds: see {@link sweptVolume}; where clearances reach the profile's, own normals are the truth. */
  #wholeVolume(): Bounded {
    const { profile } = this;
    const whole = this.#areaMm2 * profile.tipDepth(this.#widestMm);
    const integrand = (z: Centre): ContactIntegrand => ({
      strip: (h) => profile.stripMm2(h, z(h)),
      fan: (h) => profile.fanMm3(h, z(h)),
      kinks: this.#kinks(0),
    });
    const own = this.#ownSum(profile.tipFlatMm, whole, integrand);
    const wide = this.#ownSum(profile.reachMm, whole, integrand);
    const swept = sweptVolume(this.#axis, profile, INTEGRAL_SHARE * whole);
    const most = swept.mostMm3 + wide;
    const least = swept.gainMm3 + own;
    const share = profile.ballMm === undefined ? LOOSE_SHARE : 0.5;
    const error = (1 - share) * Math.abs(most - least) + swept.integralErrorMm3 + INTEGRAL_SHARE * whole;
    return { value: most + share * (least - most), error };
  }

  #climbTop(edge: number): number {
    this.#climbed ??= climbedClearance(this.#axis, CLIMB_SHARE * this.profile.flankFromMm);
    return this.#climbed[edge];
  }

  #ownSum(least: number, whole: number, of: (z: Centre) => ContactIntegrand): number {
    const { reachMm } = this.profile;
    const own = of((h) => Math.min(h, reachMm));
    return contactSum(this.#axis, least, INTEGRAL_SHARE * whole, () => own);
  }

  /** Clearances at which the depth beside a wall is not smooth. */
  #kinks(depthMm: number): number[] {
    const { cutter, reachMm } = this.profile;
    const kinks = [reachMm];
    for (const { toHeightMm, toRadiusMm } of cutter.pieces) {
      kinks.push(toRadiusMm, radiusAt(cutter, toHeightMm + depthMm));
    }
    return kinks.filter((kink) => kink <= reachMm).sort((a, b) => a - b);
  }
}

/** Clearance that the cutter uses where that over the contact is as given. */
type Centre = (clearance: number) => number;
