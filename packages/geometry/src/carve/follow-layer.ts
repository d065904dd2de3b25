import { AxisEdge } from '../measure/axis-edge.ts';
import { erodedArea } from '../measure/eroded-area.ts';
import { reachedArea } from '../measure/profile-volume.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { ArcRings } from '../outline/arc-rings.ts';
import { adaptiveIntegral, type Bounded } from './adaptive-integral.ts';
import type { CutLayer, Reach } from './cut-layer.ts';
import { type Cutter, radiusAt } from './cutter.ts';
import { type ContactIntegrand, EdgeCells } from './edge-cells.ts';
import { FollowProfile } from './follow-profile.ts';
import { reachedOutline } from './reached-outline.ts';
import { ReachedSlices } from './reached-slices.ts';

/** Share of artwork area times depth that all integrals of one measure together may be off. */
const INTEGRAL_SHARE = 1e-12;

/** What a cutter cuts that goes everywhere as deep as its flanks and the depth limit allow. */
export class FollowLayer implements CutLayer {
  readonly depthMm: number;
  readonly profile: FollowProfile;
  readonly #axis: MedialAxis;
  readonly #areaMm2: number;
  readonly #widestMm: number;

  constructor(axis: MedialAxis, profile: FollowProfile) {
    this.#axis = axis;
    this.profile = profile;
    this.depthMm = profile.depthMm;
    this.#areaMm2 = erodedArea(axis, 0);
    this.#widestMm = axis.nodeR.reduce((most, r) => Math.max(most, r), 0);
  }

  /** A rounded tip leaves slices that are no one opening of an erosion. */
  get isExact(): boolean {
    return this.profile.isStraight;
  }

  get edgeClearanceMm(): number {
    return this.profile.tipFlatMm;
  }

  reachAt(depthMm: number): Reach {
    const { profile } = this;
    if (!this.isExact) {
      return { centreMm: profile.reachMm, reachMm: radiusAt(profile.cutter, this.depthMm - depthMm) };
    }
    const inset = Math.min(depthMm * profile.slope, profile.reachMm - profile.tipFlatMm);
    return { centreMm: profile.tipFlatMm + inset, reachMm: profile.tipFlatMm };
  }

  sliceArea(depthMm: number): Bounded {
    if (this.isExact) {
      const { centreMm, reachMm } = this.reachAt(depthMm);
      const value =
        reachMm === 0 ? erodedArea(this.#axis, centreMm) : reachedArea(this.#axis, centreMm, reachMm);
      return { value, error: 0 };
    }
    const { profile } = this;
    const inset = (clearance: number): number => {
      const z = Math.min(clearance, profile.reachMm);
      return z - profile.radiusBelow(z, depthMm);
    };
    const value = this.#overContacts(radiusAt(profile.cutter, depthMm), {
      strip: (h) => h - inset(h),
      fan: (h) => (h * h - inset(h) ** 2) / 2,
      kinks: this.#kinks(depthMm),
    });
    // no centre anywhere reaches nearer to the wall than one with the greatest clearance
    const most = erodedArea(
      this.#axis,
      Math.max(0, inset(Math.max(this.#widestMm, radiusAt(profile.cutter, depthMm)))),
    );
    return { value, error: Math.max(0, most - value) };
  }

  sliceOutline(depthMm: number): ArcRings {
    const { centreMm, reachMm } = this.reachAt(depthMm);
    return reachedOutline(this.#axis, centreMm, reachMm);
  }

  volumeBetween(topMm: number, bottomMm: number): Bounded {
    if (topMm > 0 || bottomMm < this.depthMm) {
      const { depthMm } = this;
      let error = 0;
      const slice = (depth: number): number => {
        const area = this.sliceArea(depth);
        error = Math.max(error, area.error);
        return area.value;
      };
      const sum = adaptiveIntegral(slice, topMm, Math.min(bottomMm, depthMm), 1e-7 * this.#areaMm2 * depthMm);
      return { value: sum.value, error: sum.error + error * (bottomMm - topMm) };
    }
    const { profile } = this;
    const value = this.#overContacts(profile.tipFlatMm, {
      strip: (h) => profile.stripMm2(h),
      fan: (h) => profile.fanMm3(h),
      kinks: this.#kinks(0),
    });
    return this.isExact
      ? { value: value + this.#tipSectors(), error: this.#overlapBound() }
      : this.#roundedVolume(value);
  }

  /**
   * Volume by a rounded tip: no more than by its flanks with the tip as deep as the widest place lets it, moved up beside walls; no less than from the
   * contacts' own normals, nor than by the cutter without its tip and, at the depth limit, by its tip alone.
   */
  #roundedVolume(ownMm3: number): Bounded {
    const { profile } = this;
    const reach = Math.min(profile.reachMm, this.#widestMm);
    const most = this.#overContacts(0, {
      strip: (h) => profile.stripBoundMm2(h, reach),
      fan: (h) => profile.fanBoundMm3(h, reach),
      kinks: [...this.#kinks(0), reach].sort((a, b) => a - b),
    });
    let least = ownMm3;
    const tipMm = profile.flankHeightMm;
    if (profile.flankFromMm < profile.reachMm) {
      const blunt = new FollowLayer(
        this.#axis,
        new FollowProfile(withoutTip(profile.cutter, tipMm), this.depthMm - tipMm),
      );
      const flanks = blunt.volumeBetween(0, blunt.depthMm);
      const tip = new ReachedSlices(this.#axis, profile.reachMm).volumeBetween(profile.cutter, 0, tipMm);
      least = Math.max(least, flanks.value - flanks.error + tip.value - tip.error);
    }
    return { value: least, error: Math.max(0, most - least) };
  }

  wallBetween(topMm: number, bottomMm: number): Bounded {
    const { flankFromMm, reachMm, slope, tipFlatMm } = this.profile;
    const steepness = Math.hypot(1, slope) / slope;
    const planMm2 = this.sliceArea(topMm).value - this.sliceArea(bottomMm).value;
    let flankMm2 = tipFlatMm === 0 && this.isExact ? planMm2 : 0;
    if (flankMm2 === 0 && topMm === 0 && bottomMm >= this.depthMm) {
      const flankOf = (h: number): number => Math.max(0, Math.min(h, reachMm) - flankFromMm);
      flankMm2 = this.#overContacts(flankFromMm, {
        strip: flankOf,
        fan: (h) => flankOf(h) ** 2 / 2,
        kinks: [reachMm],
      });
    }
    // what the tip leaves is between level and as steep as the flanks
    const tip = Math.max(0, planMm2 - flankMm2);
    return { value: flankMm2 * steepness + (tip * (1 + steepness)) / 2, error: (tip * (steepness - 1)) / 2 };
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

  /** Integral over all contacts with at least this clearance. */
  #overContacts(least: number, integrand: ContactIntegrand): number {
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const edge = new AxisEdge(this.#axis);
    const cells = new EdgeCells(this.#axis, edge);
    const tolerance = (INTEGRAL_SHARE * this.#areaMm2 * this.depthMm) / Math.max(1, edgeFrom.length);
    let sum = 0;
    for (let e = 0; e < edgeFrom.length; e++) {
      const high = nodeR[edgeTo[e]];
      if (high >= least && !edge.isSpoke(e)) {
        edge.load(e);
        cells.load();
        sum += cells.integral(Math.max(edge.r0, least), high, integrand, tolerance);
      }
    }
    return sum;
  }

  /** Volume in narrow parts that a flat tip reaches from their mouths, over all depths. */
  #tipSectors(): number {
    const { tipFlatMm: flat, reachMm, slope } = this.profile;
    if (flat === 0 || !this.isExact) {
      return 0;
    }
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const edge = new AxisEdge(this.#axis);
    const cells = new EdgeCells(this.#axis, edge);
    const weight = (): number => (flat * flat) / (2 * slope);
    const tolerance = (INTEGRAL_SHARE * this.#areaMm2 * this.depthMm) / Math.max(1, edgeFrom.length);
    let sum = 0;
    for (let e = 0; e < edgeFrom.length; e++) {
      const low = Math.max(nodeR[edgeFrom[e]], flat);
      const high = Math.min(nodeR[edgeTo[e]], reachMm);
      if (high > low && !edge.isSpoke(e)) {
        edge.load(e);
        cells.load();
        sum += cells.sweepIntegral(low, high, weight, tolerance);
      }
    }
    return sum;
  }

  /** What discs of the tip flat can share at necks: at most half a disc over the rise from a neck to a tip flat's radius above it. */
  #overlapBound(): number {
    const { nodeR, neckCount } = this.#axis;
    const { profile } = this;
    const flat = profile.tipFlatMm;
    let sum = 0;
    for (let k = 0; k < neckCount && flat > 0; k++) {
      const rise = profile.tipDepth(nodeR[k] + flat) - profile.tipDepth(nodeR[k]);
      sum += (Math.PI * flat * flat * rise) / 2;
    }
    return sum;
  }
}

/** The cutter ground flat at a height above its tip, up to where it is straight. */
function withoutTip(cutter: Cutter, heightMm: number): Cutter {
  const flanks = cutter.pieces.filter(
    (piece) => piece.fromHeightMm >= heightMm && piece.toHeightMm > heightMm,
  );
  const flat = { fromHeightMm: 0, fromRadiusMm: 0, toHeightMm: 0, toRadiusMm: flanks[0].fromRadiusMm };
  const lowered = flanks.map((piece) => ({
    ...piece,
    fromHeightMm: piece.fromHeightMm - heightMm,
    toHeightMm: piece.toHeightMm - heightMm,
  }));
  return { ...cutter, pieces: [flat, ...lowered] };
}
