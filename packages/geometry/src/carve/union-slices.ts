import { perimeter, signedArea } from '@pourproof/plane';
import { type ArcRings, polygonFromArcs } from '../outline/arc-rings.ts';
import { adaptiveIntegral, type Bounded } from './adaptive-integral.ts';
import { type CutLayer, containsReach } from './cut-layer.ts';
import { joinOutlines } from './join-outlines.ts';

/** Depths in a band at which it is looked whether one step's slice holds all others. */
const PROBES = 64;
/** Share of the first layer's volume that a numeric integral over joined slices may be off. */
const INTEGRAL_SHARE = 1e-4;

/** Depths between which one step's slices hold all others', or none do. */
interface Band {
  readonly topMm: number;
  readonly bottomMm: number;
  readonly holder: CutLayer | undefined;
}

/** The same with its walls where no step holds all: their area, and how far they lean back from upright. */
export interface WallBand extends Band {
  readonly slantMm2: number;
  readonly leanRad: number;
}

/** Thin bands into which joined slices are cut to tell their walls. */
const THIN_BANDS = 8;
/** Share by which their walls may be off (our guess, no bound). */
const JOINED_SHARE = 0.02;

/** The steps' cuts together, slice by slice. */
export class UnionSlices {
  readonly layers: readonly CutLayer[];
  readonly toleranceMm: number;
  /** All depths at which some step ends, rising, from 0. */
  readonly #stops: readonly number[];

  constructor(layers: readonly CutLayer[], toleranceMm: number) {
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
    const joined = this.sliceOutline(depthMm);
    // what each part may be short of its own slice, all of them may be short of theirs together
    const short = parts.reduce((sum, part) => sum + (part.isExact ? 0 : part.sliceArea(depthMm).error), 0);
    return { value: signedArea(joined), error: this.toleranceMm * perimeter(joined) + short };
  }

  /** Outline at a depth, with true arcs where one step's slice holds all others. */
  sliceOutline(depthMm: number): ArcRings {
    const parts = this.#partsAt(depthMm);
    if (parts.length === 1) {
      return parts[0].sliceOutline(depthMm);
    }
    return joinOutlines(
      parts.map((part) => part.sliceOutline(depthMm)),
      this.toleranceMm,
    );
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
    return this.wallBands()
      .map(({ topMm, bottomMm, holder, slantMm2 }) =>
        holder === undefined
          ? { value: slantMm2, error: JOINED_SHARE * slantMm2 }
          : holder.wallBetween(topMm, bottomMm),
      )
      .reduce(added, NOTHING);
  }

  /** The bands between stops; those that no step holds alone in thin ones. */
  wallBands(): readonly WallBand[] {
    return this.#bands().flatMap((band) =>
      band.holder === undefined ? this.#thinBands(band) : { ...band, slantMm2: 0, leanRad: 0 },
    );
  }

  /** Level floors above the deepest, where a step ends and the next goes on in a smaller slice. */
  ledgeArea(): number {
    let sum = 0;
    for (const stop of this.#stops.slice(1, -1)) {
      const next = this.#stops[this.#stops.indexOf(stop) + 1];
      const below = new UnionSlices(
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
    const active = new UnionSlices(
      this.layers.filter((layer) => layer.depthMm >= bottomMm),
      this.toleranceMm,
    );
    const height = (bottomMm - topMm) / THIN_BANDS;
    return Array.from({ length: THIN_BANDS }, (_, k) => {
      const top = topMm + k * height;
      const plan = active.sliceArea(top).value - active.sliceArea(Math.min(bottomMm, top + height)).value;
      const upright =
        height * perimeter(polygonFromArcs(active.sliceOutline(top + height / 2), this.toleranceMm));
      return {
        topMm: top,
        bottomMm: Math.min(bottomMm, top + height),
        holder: undefined,
        slantMm2: Math.hypot(plan, upright),
        leanRad: Math.atan2(Math.max(0, plan), upright),
      };
    });
  }

  #joinedVolume(top: number, bottom: number): Bounded {
    const errors = new Map<number, number>();
    const slice = (depth: number): number => {
      const { value, error } = this.sliceArea(depth);
      errors.set(depth, error);
      return value;
    };
    const tolerance = INTEGRAL_SHARE * slice(top) * (bottom - top);
    const sum = adaptiveIntegral(slice, top, bottom, tolerance);
    // slices of rounded tips lie inside the true ones: what one step cuts by itself is cut by all
    const most = this.layers
      .filter((layer) => layer.depthMm >= bottom)
      .reduce((value, layer) => Math.max(value, layer.volumeBetween(top, bottom).value), sum.value);
    return { value: most, error: sum.error + upperSum(errors) };
  }

  /** The steps whose slices together make the slice: those that no other one's slice holds. */
  #partsAt(depthMm: number): CutLayer[] {
    const parts: CutLayer[] = [];
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

/** Integral of a function of depth from above: on each stretch between known places the greater of its ends. */
function upperSum(known: ReadonlyMap<number, number>): number {
  const places = [...known].sort(([a], [b]) => a - b);
  let sum = 0;
  for (let k = 0; k + 1 < places.length; k++) {
    const [[from, low], [to, high]] = [places[k], places[k + 1]];
    sum += (to - from) * Math.max(low, high);
  }
  return sum;
}

function holds(a: CutLayer, b: CutLayer, depthMm: number): boolean {
  return b.isExact && containsReach(a.reachAt(depthMm), b.reachAt(depthMm));
}

function holdsAll(layer: CutLayer, others: readonly CutLayer[], top: number, bottom: number): boolean {
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
