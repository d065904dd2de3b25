import { AxisEdge } from '../measure/axis-edge.ts';
import { erodedArea } from '../measure/eroded-area.ts';
import { reachedArea } from '../measure/profile-volume.ts';
import { vVolume } from '../measure/v-volume.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { ArcRings } from '../outline/arc-rings.ts';
import { adaptiveIntegral, type Bounded } from './adaptive-integral.ts';
import { contactSum } from './contact-sum.ts';
import type { CutLayer, Reach } from './cut-layer.ts';
import { EdgeCells } from './edge-cells.ts';
import type { FollowProfile } from './follow-profile.ts';
import { reachedOutline } from './reached-outline.ts';

/** Share of artwork area times depth that all integrals of one measure together may be off. */
const INTEGRAL_SHARE = 1e-12;
/** Share of a volume between two depths inside the cut that the integral over slices may be off. */
const BAND_SHARE = 1e-7;

/**
 * What a cutter with straight flanks, and a true or a flat tip, cuts that goes everywhere as deep as its flanks and the depth limit allow: at each depth the
 * opening, by the tip's flat, of the artwork eroded by what the flanks widen from there to the face.
 */
export class FollowLayer implements CutLayer {
  readonly depthMm: number;
  readonly isExact = true;
  readonly profile: FollowProfile;
  readonly #axis: MedialAxis;
  #whole: Bounded | undefined;

  constructor(axis: MedialAxis, profile: FollowProfile) {
    this.#axis = axis;
    this.profile = profile;
    this.depthMm = profile.depthMm;
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

  volumeBetween(topMm: number, bottomMm: number): Bounded {
    if (topMm > 0 || bottomMm < this.depthMm) {
      const most = this.sliceArea(topMm).value * (bottomMm - topMm);
      const slice = (depth: number): number => this.sliceArea(depth).value;
      return adaptiveIntegral(slice, topMm, Math.min(bottomMm, this.depthMm), BAND_SHARE * most);
    }
    this.#whole ??= this.profile.tipFlatMm === 0 ? this.#pointedVolume() : this.#bluntVolume();
    return this.#whole;
  }

  /** Area of the walls between two depths; what a flat tip leaves along the axis counts as between level and as steep as the flanks. */
  wallBetween(topMm: number, bottomMm: number): Bounded {
    const { reachMm, slope, tipFlatMm } = this.profile;
    const steepness = Math.hypot(1, slope) / slope;
    const planMm2 = this.sliceArea(topMm).value - this.sliceArea(bottomMm).value;
    let flankMm2 = tipFlatMm === 0 ? planMm2 : 0;
    if (tipFlatMm > 0 && topMm === 0 && bottomMm >= this.depthMm) {
      const flank = (h: number): number => Math.max(0, Math.min(h, reachMm) - tipFlatMm);
      const of = { strip: flank, fan: (h: number) => flank(h) ** 2 / 2, kinks: [reachMm] };
      flankMm2 = contactSum(this.#axis, tipFlatMm, INTEGRAL_SHARE * planMm2, () => of);
    }
    const tip = Math.max(0, planMm2 - flankMm2);
    return { value: flankMm2 * steepness + (tip * (1 + steepness)) / 2, error: (tip * (steepness - 1)) / 2 };
  }

  #pointedVolume(): Bounded {
    const { slope, depthMm } = this.profile;
    return { value: vVolume(this.#axis, { includedRad: 2 * Math.atan(slope), depthMm }), error: 0 };
  }

  #bluntVolume(): Bounded {
    const { profile } = this;
    const { tipFlatMm, reachMm } = profile;
    const centre = (h: number): number => Math.min(h, reachMm);
    const of = {
      strip: (h: number) => profile.stripMm2(h, centre(h)),
      fan: (h: number) => profile.fanMm3(h, centre(h)),
      kinks: [reachMm],
    };
    const tolerance = INTEGRAL_SHARE * erodedArea(this.#axis, 0) * this.depthMm;
    const own = contactSum(this.#axis, tipFlatMm, tolerance, () => of);
    return { value: own + this.#tipSectors(tolerance), error: this.#overlapBound() };
  }

  /** Volume in narrow parts that a flat tip reaches from their mouths, over all depths. */
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
      if (high > low && !edge.isSpoke(e)) {
        edge.load(e);
        cells.load();
        sum += cells.sweepIntegral(low, high, ofEach);
      }
    }
    return sum * weight;
  }

  /** What discs of the tip flat can share at necks: at most half a disc over the rise from a neck to a tip flat's radius above it. */
  #overlapBound(): number {
    const { nodeR, neckCount } = this.#axis;
    const { profile } = this;
    const flat = profile.tipFlatMm;
    let sum = 0;
    for (let k = 0; k < neckCount; k++) {
      const rise = profile.tipDepth(nodeR[k] + flat) - profile.tipDepth(nodeR[k]);
      sum += (Math.PI * flat * flat * rise) / 2;
    }
    return sum;
  }
}
