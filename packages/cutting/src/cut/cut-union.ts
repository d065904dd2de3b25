import { type ArcRings, arcRingsArea, polygonFromArcs } from '@pourproof/geometry';
import { perimeter } from '@pourproof/plane';
import { adaptiveIntegral, type Bounded } from '../integrals/adaptive-integral.ts';
import { joinOutlines } from '../slices/join-outlines.ts';
import { containsReach, type StepCut } from '../slices/step-cut.ts';

/** Intervals of a band at whose ends one step's slice is checked to contain all others. */
const CONTAINMENT_CHECKS = 64;
/**
 * Tolerance of the integral of joined slices over depth, relative to the top slice times the height: every
 * slice is a union of polygons, and a finer integral costs more than it tells.
 */
const JOINED_VOLUME_REL_TOL = 1e-4;

/** A slice joined from those of several steps. */
interface JoinedSlice {
  readonly outline: ArcRings;
  readonly areaMm2: number;
  readonly halfMm2: number;
  readonly tipsMm2: number;
}

/** Depths between which one step's slices contain those of all others, or no step's do. */
interface Band {
  readonly topMm: number;
  readonly bottomMm: number;
  readonly container: StepCut | undefined;
}

/** A band with its walls where no step contains all others: their area, and their angle from the vertical. */
export interface WallBand extends Band {
  readonly slantMm2: number;
  readonly leanRad: number;
  /** Their area as seen from above, and from the side. */
  readonly planMm2: number;
  readonly uprightMm2: number;
}

/** Joined slices kept for reuse: about as many as one integral over depth needs. */
const MAX_KEPT_SLICES = 64;

/** Thin bands into which a band of joined slices is divided to estimate its walls. */
const THIN_BANDS = 8;
/**
 * Error of the walls, as a multiple of the difference to half as many bands (observed: below 2, and 3 where
 * rounded tips meet).
 */
const COARSE_DIFFERENCES = 3;
/** The union of what several steps cut, slice by slice. */
export class CutUnion {
  readonly cuts: readonly StepCut[];
  readonly toleranceMm: number;
  /** 0 and all depths at which a step ends, in rising order. */
  readonly #stops: readonly number[];
  /** Joined slices by depth. */
  readonly #slices = new Map<number, JoinedSlice>();

  constructor(cuts: readonly StepCut[], toleranceMm: number) {
    this.cuts = cuts;
    this.toleranceMm = toleranceMm;
    this.#stops = [...new Set([0, ...cuts.map((cut) => cut.depthMm)])].sort((a, b) => a - b);
  }

  /** Depth of the deepest step, whether or not it gets there. */
  get depthLimitMm(): number {
    return this.#stops[this.#stops.length - 1];
  }

  /** Area at a depth; at the greatest, that of the floor. */
  sliceArea(depthMm: number): Bounded {
    const parts = this.#partsAt(depthMm);
    if (parts.length <= 1) {
      return parts[0]?.sliceArea(depthMm) ?? { value: 0, error: 0 };
    }
    const { areaMm2, halfMm2 } = this.#joined(depthMm);
    // together the parts may lack as much as each one lacks of its own slice
    const short = parts.reduce((sum, part) => sum + (part.isExact ? 0 : part.sliceArea(depthMm).error), 0);
    return { value: areaMm2, error: halfMm2 + short };
  }

  /** Outline at a depth, with true arcs where one step's slice contains all others. */
  sliceOutline(depthMm: number): ArcRings {
    const parts = this.#partsAt(depthMm);
    if (parts.length === 1) {
      return parts[0].sliceOutline(depthMm);
    }
    return this.#joined(depthMm).outline;
  }

  /**
   * The parts' outlines joined: the middle and half the width of the interval that holds the area, and the
   * area of the outlines of rounded tips by themselves.
   */
  #joined(depthMm: number): JoinedSlice {
    const known = this.#slices.get(depthMm);
    if (known !== undefined) {
      return known;
    }
    const parts = this.#partsAt(depthMm);
    const outlines = parts.map((part) => part.sliceOutline(depthMm));
    const { outline, areaMm2, shortMm2, excessMm2 } = joinOutlines(outlines, this.toleranceMm);
    const excess = parts.reduce((sum, part) => sum + part.sliceExcess(depthMm), excessMm2);
    const tipsMm2 = parts.reduce((sum, part, k) => sum + (part.isExact ? 0 : arcRingsArea(outlines[k])), 0);
    const slice = {
      outline,
      areaMm2: areaMm2 + (shortMm2 - excess) / 2,
      halfMm2: (shortMm2 + excess) / 2,
      tipsMm2,
    };
    if (this.#slices.size >= MAX_KEPT_SLICES) {
      this.#slices.clear();
    }
    this.#slices.set(depthMm, slice);
    return slice;
  }

  volume(): Bounded {
    return this.#bands()
      .map(
        ({ topMm, bottomMm, container }) =>
          container?.volumeBetween(topMm, bottomMm) ?? this.#joinedVolume(topMm, bottomMm),
      )
      .reduce(added, NOTHING);
  }

  wallArea(): Bounded {
    return this.#bands()
      .map((band) => band.container?.wallBetween(band.topMm, band.bottomMm) ?? this.#joinedWall(band))
      .reduce(added, NOTHING);
  }

  /** Walls of a band of joined slices, from thin bands; the error is estimated by halving their number. */
  #joinedWall(band: Band): Bounded {
    const thin = this.#thinBands(band);
    const value = thin.reduce((sum, { slantMm2 }) => sum + slantMm2, 0);
    let coarse = 0;
    for (let k = 0; k + 1 < thin.length; k += 2) {
      const [above, below] = [thin[k], thin[k + 1]];
      coarse += Math.hypot(above.planMm2 + below.planMm2, above.uprightMm2 + below.uprightMm2);
    }
    return { value, error: COARSE_DIFFERENCES * Math.abs(value - coarse) };
  }

  /** The bands between stops; where no step contains all others, divided into thin ones. */
  wallBands(): readonly WallBand[] {
    return this.#bands().flatMap((band) =>
      band.container === undefined
        ? this.#thinBands(band)
        : { ...band, slantMm2: 0, leanRad: 0, planMm2: 0, uprightMm2: 0 },
    );
  }

  /** Area of level floors above the deepest, where a step ends and a smaller slice goes on, mm². */
  ledgeArea(): number {
    let sum = 0;
    for (const stop of this.#stops.slice(1, -1)) {
      const next = this.#stops[this.#stops.indexOf(stop) + 1];
      const below = new CutUnion(
        this.cuts.filter((cut) => cut.depthMm >= next),
        this.toleranceMm,
      );
      sum += Math.max(0, this.sliceArea(stop).value - below.sliceArea(stop).value);
    }
    return sum;
  }

  /** The bands between stops, neighbours with the same container merged. */
  #bands(): readonly Band[] {
    const bands: Band[] = [];
    this.#stops.slice(1).forEach((bottomMm, k) => {
      const topMm = this.#stops[k];
      const active = this.cuts.filter((cut) => cut.depthMm >= bottomMm);
      const container = active.find((cut) => containsAll(cut, active, topMm, bottomMm));
      const above = bands.at(-1);
      if (above !== undefined && container !== undefined && above.container === container) {
        bands[bands.length - 1] = { ...above, bottomMm };
      } else {
        bands.push({ topMm, bottomMm, container });
      }
    });
    return bands;
  }

  /** Thin bands of a band, each with the slope that its outline and the shrinking of its slices give. */
  #thinBands({ topMm, bottomMm }: Band): WallBand[] {
    const active = new CutUnion(
      this.cuts.filter((cut) => cut.depthMm >= bottomMm),
      this.toleranceMm,
    );
    // thinner towards the bottom, where the walls of rounded tips slope most
    const at = (k: number): number => bottomMm - (bottomMm - topMm) * (1 - k / THIN_BANDS) ** 2;
    return Array.from({ length: THIN_BANDS }, (_, k) => {
      const [top, bottom] = [at(k), at(k + 1)];
      const plan = active.sliceArea(top).value - active.sliceArea(bottom).value;
      const outline = active.sliceOutline((top + bottom) / 2);
      const upright = (bottom - top) * perimeter(polygonFromArcs(outline, this.toleranceMm));
      return {
        topMm: top,
        bottomMm: bottom,
        container: undefined,
        slantMm2: Math.hypot(plan, upright),
        leanRad: Math.atan2(Math.max(0, plan), upright),
        planMm2: plan,
        uprightMm2: upright,
      };
    });
  }

  /**
   * Volume of a band of joined slices. The error of the integral over depth is estimated by two quadrature
   * rules; chords for arcs, and what rounded tips cut beyond their outlines, bound the rest.
   */
  #joinedVolume(top: number, bottom: number): Bounded {
    let half = 0;
    const slice = (depth: number): number => {
      const { areaMm2, halfMm2 } = this.#joined(depth);
      half = Math.max(half, halfMm2);
      return areaMm2;
    };
    const tolerance = JOINED_VOLUME_REL_TOL * slice(top) * (bottom - top);
    const sum = adaptiveIntegral(slice, top, bottom, tolerance);
    const tips = adaptiveIntegral((depth) => this.#joined(depth).tipsMm2, top, bottom, tolerance);
    const active = this.cuts.filter((cut) => cut.depthMm >= bottom);
    const own = active.map((cut) => ({ cut, volume: cut.volumeBetween(top, bottom) }));
    // at worst all that the outlines of rounded tips leave out of their own cuts is missing
    const missing = own
      .filter(({ cut }) => !cut.isExact)
      .reduce((all, { volume }) => all + volume.value + volume.error, -tips.value);
    const flattened = half * (bottom - top);
    const most = sum.value + flattened + Math.max(0, missing);
    const least = own.reduce(
      (value, { volume }) => Math.max(value, volume.value - volume.error),
      sum.value - flattened,
    );
    // the union has no less than any one step; what the outlines of rounded tips leave out others mostly cut
    const value = own.reduce((all, { volume }) => Math.max(all, volume.value), sum.value);
    return { value, error: Math.max(most - value, value - least) + sum.error + tips.error };
  }

  /** The cuts whose slices make up the slice: those that no other one's slice contains. */
  #partsAt(depthMm: number): StepCut[] {
    const parts: StepCut[] = [];
    for (const cut of this.cuts) {
      if (cut.depthMm < depthMm || parts.some((part) => contains(part, cut, depthMm))) {
        continue;
      }
      const kept = parts.filter((part) => !contains(cut, part, depthMm));
      parts.splice(0, parts.length, ...kept, cut);
    }
    return parts;
  }
}

function contains(a: StepCut, b: StepCut, depthMm: number): boolean {
  return b.isExact && containsReach(a.reachAt(depthMm), b.reachAt(depthMm));
}

function containsAll(cut: StepCut, others: readonly StepCut[], top: number, bottom: number): boolean {
  for (let k = 0; k <= CONTAINMENT_CHECKS; k++) {
    // rounding must not lead below the bottom
    const depth = Math.min(bottom, top + (k / CONTAINMENT_CHECKS) * (bottom - top));
    if (others.some((other) => other !== cut && !contains(cut, other, depth))) {
      return false;
    }
  }
  return true;
}

const NOTHING: Bounded = { value: 0, error: 0 };

function added(a: Bounded, b: Bounded): Bounded {
  return { value: a.value + b.value, error: a.error + b.error };
}
