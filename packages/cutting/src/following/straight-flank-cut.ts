import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import { erodedArea, reachedArea, vVolume } from '@pourproof/geometry';
import { contactSum } from '../cells/contact-sum.ts';
import { profileChords } from '../cutters/profile-chords.ts';
import { widestClearance } from '../depth/widest-clearance.ts';
import type { Bounded } from '../integrals/adaptive-integral.ts';
import { reachedOutline } from '../slices/reached-outline.ts';
import type { Reach, StepCut } from '../slices/step-cut.ts';
import { bluntVolume, STRAIGHT_FLANK_REL_TOL } from './blunt-volume.ts';
import { FollowingProfile } from './following-profile.ts';
import { halfSweepArea, tipSurfaces } from './tip-surfaces.ts';

/** Share of a volume that its error may take before slices are asked too (our choice). */
const WIDE_SHARE = 1 / 100;
/** As many steps of depth leave a fiftieth at most, where the cut narrows to nothing. A slice takes a hundredth of the time of the cut. */
const WIDE_SLICES = 64;
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
    const { value, error } = bluntVolume(this.#axis, this.profile);
    return error > WIDE_SHARE * value ? this.#betweenSlices(value - error, value + error) : { value, error };
  }

  /** A volume between two bounds, drawn closer by slices: those at the ends of a step of depth hold it between them. */
  #betweenSlices(low: number, high: number): Bounded {
    const step = this.deepestMm / WIDE_SLICES;
    const areas = Array.from({ length: WIDE_SLICES + 1 }, (_, k) => this.sliceArea(k * step).value);
    const inner = areas.slice(1, -1).reduce((sum, mm2) => sum + mm2, 0);
    const least = Math.max(low, step * (inner + areas[WIDE_SLICES]));
    const most = Math.min(high, step * (inner + areas[0]));
    return { value: (least + most) / 2, error: Math.max(0, most - least) / 2 };
  }
}
