import { type ArcRings, arcRingsArea, polygonFromArcs } from '@pourproof/geometry';
import { perimeter } from '@pourproof/plane';
import { adaptiveIntegral, type Bounded } from '../integrals/adaptive-integral.ts';
import { joinOutlines } from '../slices/join-outlines.ts';
import { containsReach, type StepCut } from '../slices/step-cut.ts';

/** Depths in a band at which it is looked whether one step's slice holds all others. */
const PROBES = 64;
/** Share of the first layer's volume that a numeric integral over joined slices may be off. */
const INTEGRAL_SHARE = 1e-4;

/** A slice that is joined from several. */
interface JoinedSlice {
  readonly outline: ArcRings;
  readonly areaMm2: number;
  readonly halfMm2: number;
  readonly tipsMm2: number;
}

/** Depths between which one step's slices hold all others', or none do. */
interface Band {
  readonly topMm: number;
  readonly bottomMm: number;
  readonly holder: StepCut | undefined;
}

/** The same with its walls where no step holds all: their area, and how far they lean back from upright. */
export interface WallBand extends Band {
  readonly slantMm2: number;
  readonly leanRad: number;
  /** What they are from above and from the side. */
  readonly planMm2: number;
  readonly uprightMm2: number;
}

/** Joined slices that are kept: as many as one integral over depth needs as a rule. */
const MAX_KEPT_SLICES = 64;

/** Thin bands into which joined slices are cut to tell their walls. */
const THIN_BANDS = 8;
/** How many times what half as many bands miss these may be off (seen: less than twice as much, where rounded tips meet three times). */
const DOUBT = 3;
/** The steps' cuts together, slice by slice. */
export class CutUnion {
  readonly layers: readonly StepCut[];
  readonly toleranceMm: number;
  /** All depths at which some step ends, rising, from 0. */
  readonly #stops: readonly number[];
  /** Joined slices by depth. */
  readonly #slices = new Map<number, JoinedSlice>();

  constructor(layers: readonly StepCut[], toleranceMm: number) {
    this.layers = layers;
    this.toleranceMm = toleranceMm;
    this.#stops = [...new Set([0, ...layers.map((layer) => layer.depthMm)])].sort((a, b) => a - b);
  }

  get maxDepthMm(): number {
    return this.#stops[this.#stops.length - 1];
  }

  /** Area at a depth; at the deepest the floor. */
  sliceArea(depthMm: number): Bounded {
    const parts = this.#partsAt(depthMm);
    if (parts.length <= 1) {
      return parts[0]?.sliceArea(depthMm) ?? { value: 0, error: 0 };
    }
    const { areaMm2, halfMm2 } = this.#joined(depthMm);
    // what each part may be short of its own slice, all of them may be short of theirs together
    const short = parts.reduce((sum, part) => sum + (part.isExact ? 0 : part.sliceArea(depthMm).error), 0);
    return { value: areaMm2, error: halfMm2 + short };
  }

  /** Outline at a depth, with true arcs where one step's slice holds all others. */
  sliceOutline(depthMm: number): ArcRings {
    const parts = this.#partsAt(depthMm);
    if (parts.length === 1) {
      return parts[0].sliceOutline(depthMm);
    }
    return this.#joined(depthMm).outline;
  }

  /** The parts' outlines as one, with the middle of what its area may be, by half of how much, and what rounded tips' outlines have by themselves. */
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
        ({ topMm, bottomMm, holder }) =>
          holder?.volumeBetween(topMm, bottomMm) ?? this.#joinedVolume(topMm, bottomMm),
      )
      .reduce(added, NOTHING);
  }

  wallArea(): Bounded {
    return this.#bands()
      .map((band) => band.holder?.wallBetween(band.topMm, band.bottomMm) ?? this.#joinedWall(band))
      .reduce(added, NOTHING);
  }

  /** Walls of a band in which slices are joined, as thin bands tell; the error is an estimate from what half as many miss. */
  #joinedWall(band: Band): Bounded {
    const thin = this.#thinBands(band);
    const value = thin.reduce((sum, { slantMm2 }) => sum + slantMm2, 0);
    let coarse = 0;
    for (let k = 0; k + 1 < thin.length; k += 2) {
      const [above, below] = [thin[k], thin[k + 1]];
      coarse += Math.hypot(above.planMm2 + below.planMm2, above.uprightMm2 + below.uprightMm2);
    }
    return { value, error: DOUBT * Math.abs(value - coarse) };
  }

  /** The bands between stops; those that no step holds alone in thin ones. */
  wallBands(): readonly WallBand[] {
    return this.#bands().flatMap((band) =>
      band.holder === undefined
        ? this.#thinBands(band)
        : { ...band, slantMm2: 0, leanRad: 0, planMm2: 0, uprightMm2: 0 },
    );
  }

  /** Level floors above the deepest, where a step ends and the next goes on in a smaller slice. */
  ledgeArea(): number {
    let sum = 0;
    for (const stop of this.#stops.slice(1, -1)) {
      const next = this.#stops[this.#stops.indexOf(stop) + 1];
      const below = new CutUnion(
        this.layers.filter((layer) => layer.depthMm >= next),
        this.toleranceMm,
      );
      sum += Math.max(0, this.sliceArea(stop).value - below.sliceArea(stop).value);
    }
    return sum;
  }

  /** The bands between stops, those with the same holder as one. */
  #bands(): readonly Band[] {
    const bands: Band[] = [];
    this.#stops.slice(1).forEach((bottomMm, k) => {
      const topMm = this.#stops[k];
      const active = this.layers.filter((layer) => layer.depthMm >= bottomMm);
      const holder = active.find((layer) => holdsAll(layer, active, topMm, bottomMm));
      const above = bands.at(-1);
      if (above !== undefined && holder !== undefined && above.holder === holder) {
        bands[bands.length - 1] = { ...above, bottomMm };
      } else {
        bands.push({ topMm, bottomMm, holder });
      }
    });
    return bands;
  }

  /** A band in thin ones, each as steep as its outline and what its slices lose let it be. */
  #thinBands({ topMm, bottomMm }: Band): WallBand[] {
    const active = new CutUnion(
      this.layers.filter((layer) => layer.depthMm >= bottomMm),
      this.toleranceMm,
    );
    // bands crowd at the bottom, where rounded tips lean the most
    const at = (k: number): number => bottomMm - (bottomMm - topMm) * (1 - k / THIN_BANDS) ** 2;
    return Array.from({ length: THIN_BANDS }, (_, k) => {
      const [top, bottom] = [at(k), at(k + 1)];
      const plan = active.sliceArea(top).value - active.sliceArea(bottom).value;
      const outline = active.sliceOutline((top + bottom) / 2);
      const upright = (bottom - top) * perimeter(polygonFromArcs(outline, this.toleranceMm));
      return {
        topMm: top,
        bottomMm: bottom,
        holder: undefined,
        slantMm2: Math.hypot(plan, upright),
        leanRad: Math.atan2(Math.max(0, plan), upright),
        planMm2: plan,
        uprightMm2: upright,
      };
    });
  }

  /**
   * Volume of a band in which slices are joined. Two rules of integration tell how far the integral over depth may be off; chords for arcs, and what rounded
   * tips cut beyond their own outlines, bound the rest.
   */
  #joinedVolume(top: number, bottom: number): Bounded {
    let half = 0;
    const slice = (depth: number): number => {
      const { areaMm2, halfMm2 } = this.#joined(depth);
      half = Math.max(half, halfMm2);
      return areaMm2;
    };
    const tolerance = INTEGRAL_SHARE * slice(top) * (bottom - top);
    const sum = adaptiveIntegral(slice, top, bottom, tolerance);
    const tips = adaptiveIntegral((depth) => this.#joined(depth).tipsMm2, top, bottom, tolerance);
    const active = this.layers.filter((layer) => layer.depthMm >= bottom);
    const own = active.map((layer) => ({ layer, volume: layer.volumeBetween(top, bottom) }));
    // all that the outlines of rounded tips leave out of their own cuts may be missing
    const missing = own
      .filter(({ layer }) => !layer.isExact)
      .reduce((all, { volume }) => all + volume.value + volume.error, -tips.value);
    const flattened = half * (bottom - top);
    const most = sum.value + flattened + Math.max(0, missing);
    const least = own.reduce(
      (value, { volume }) => Math.max(value, volume.value - volume.error),
      sum.value - flattened,
    );
    // what one step cuts by itself is cut by all; what rounded tips' outlines leave out of their own cuts others mostly cut
    const value = own.reduce((all, { volume }) => Math.max(all, volume.value), sum.value);
    return { value, error: Math.max(most - value, value - least) + sum.error + tips.error };
  }

  /** The steps whose slices together make the slice: those that no other one's slice holds. */
  #partsAt(depthMm: number): StepCut[] {
    const parts: StepCut[] = [];
    for (const layer of this.layers) {
      if (layer.depthMm < depthMm || parts.some((part) => holds(part, layer, depthMm))) {
        continue;
      }
      const kept = parts.filter((part) => !holds(layer, part, depthMm));
      parts.splice(0, parts.length, ...kept, layer);
    }
    return parts;
  }
}

function holds(a: StepCut, b: StepCut, depthMm: number): boolean {
  return b.isExact && containsReach(a.reachAt(depthMm), b.reachAt(depthMm));
}

function holdsAll(layer: StepCut, others: readonly StepCut[], top: number, bottom: number): boolean {
  for (let k = 0; k <= PROBES; k++) {
    // rounding must not lead below the deepest
    const depth = Math.min(bottom, top + (k / PROBES) * (bottom - top));
    if (others.some((other) => other !== layer && !holds(layer, other, depth))) {
      return false;
    }
  }
  return true;
}

const NOTHING: Bounded = { value: 0, error: 0 };

function added(a: Bounded, b: Bounded): Bounded {
  return { value: a.value + b.value, error: a.error + b.error };
}
