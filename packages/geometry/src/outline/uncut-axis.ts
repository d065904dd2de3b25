import { pollStep } from '@pourproof/plane';
import { AxisEdge } from '../measure/axis-edge.ts';
import { CORNER, type StrokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { LevelCrossings } from './level-crossings.ts';
import type { NarrowParts } from './narrow-parts.ts';
import { NearCentres } from './near-centres.ts';
import type { WithoutFacets } from './without-facets.ts';

/** What no disc of the cutter covers of the axis in one narrow part. */
export interface UncutAxis {
  /** Largest clearance on it, mm, and where that is, relative to the axis' origin. */
  clearance: number;
  x: number;
  y: number;
  /** Its length without the branches of flush points, and the lengths of what carries stroke and taper, mm. */
  length: number;
  strokeLength: number;
  taperLength: number;
  /** Longest way from a tip of a corner, mm: a rounded corner has as many tips as points. */
  cornerLength: number;
  /** Sums of length times half the width, over that length and over what carries stroke or taper, mm². */
  swept: number;
  strokeSwept: number;
  /** Least clearance of what carries stroke; infinite where nothing does. */
  narrowest: number;
  /** Least clearance at the waists of the narrow part, covered or not, mm; infinite where it has none. */
  least: number;
}

/** Bisection steps that find where an edge leaves a disc: to 2⁻⁴⁰ of the edge. */
const HALVINGS = 40;
/** A gap of a smaller share of the edge is rounding. */
const GAP_REL_TOL = 1e-9;

/**
 * For each narrow part, numbered as in `parts`, what the discs at its crossings leave uncovered of its axis; facets are left out.
 */
export function uncutAxis(
  axis: MedialAxis,
  { crossings, isFacet }: Pick<WithoutFacets, 'crossings' | 'isFacet'>,
  parts: NarrowParts,
  { part, start, strokeStart, end, reach }: StrokeParts,
): Map<number, UncutAxis> {
  const { edgeFrom, nodeR, nodeX, nodeY, bottleneckCount } = axis;
  const discs = new DiscGroups(crossings, (k) => parts.of(crossings.edge[k]));
  const shape = new AxisEdge(axis);
  const found = new Map<number, UncutAxis>();
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    const from = edgeFrom[e];
    if (isFacet[e] === 1 || nodeR[from] >= crossings.radius || shape.isSecondary(e)) {
      continue;
    }
    const component = parts.of(e);
    let sum = found.get(component);
    if (sum === undefined) {
      // a disc may cover this node: it stands for the place only as long as no other is found
      sum = nothingAt(nodeX[from], nodeY[from]);
      found.set(component, sum);
    }
    if (from < bottleneckCount) {
      sum.least = Math.min(sum.least, nodeR[from]);
    }
    shape.load(e);
    const [low, high] = uncutShares(shape, discs, component, crossings.radius);
    if (high > low) {
      const whole = sweep(shape, low, high);
      if (!isFlush(whole)) {
        sum.length += whole.length;
        sum.swept += whole.swept;
      }
      const before = low === 0 && reach[from] < Infinity ? reach[from] : 0;
      sum.cornerLength = Math.max(sum.cornerLength, before + whole.length);
      const top = Math.min(high, end[e]);
      const stroke = part[e] === CORNER ? top : Math.max(low, strokeStart[e]);
      const taper = part[e] === CORNER ? top : Math.max(low, start[e]);
      // mostly all of it is one of both
      const swept = (from: number, to: number): Sweep =>
        from === low && to === high ? whole : sweep(shape, from, to);
      if (taper < Math.min(stroke, top)) {
        const { length, swept: area } = swept(taper, Math.min(stroke, top));
        sum.strokeSwept += area;
        sum.taperLength += length;
      }
      if (stroke < top) {
        const { length, swept: area, lowest } = swept(stroke, top);
        sum.strokeSwept += area;
        sum.strokeLength += length;
        sum.narrowest = Math.min(sum.narrowest, lowest);
      }
      shape.atShare(high);
      if (shape.clearance > sum.clearance) {
        sum.clearance = shape.clearance;
        sum.x = shape.x;
        sum.y = shape.y;
      }
    }
  }
  return found;
}

/** A branch on which the clearance grows as fast as the way, but for this share, starts at a corner that turns by less than 0.01°. */
const FLUSH_REL_TOL = 1e-9;

/** Whether that is so: whether such a point has a branch at all hangs on rounding. */
function isFlush({ length, lowest, highest }: Sweep): boolean {
  return highest - lowest >= (1 - FLUSH_REL_TOL) * length;
}

function nothingAt(x: number, y: number): UncutAxis {
  return {
    clearance: 0,
    x,
    y,
    length: 0,
    strokeLength: 0,
    taperLength: 0,
    cornerLength: 0,
    swept: 0,
    strokeSwept: 0,
    narrowest: Number.POSITIVE_INFINITY,
    least: Number.POSITIVE_INFINITY,
  };
}

/** Length of a part of an edge, the clearances at both ends, and the area on one side: clearance summed along it. */
interface Sweep {
  readonly length: number;
  readonly swept: number;
  readonly lowest: number;
  readonly highest: number;
}

/** The loaded edge between two shares. */
function sweep(shape: AxisEdge, low: number, high: number): Sweep {
  const length = shape.lengthBetween(low, high);
  shape.atShare(high);
  const highest = shape.clearance;
  shape.atShare(low);
  const lowest = shape.clearance;
  return { length, swept: shape.sweptBetween(low, high), lowest, highest };
}

/** The shares of the edge, from its low end, between which no disc covers it. */
function uncutShares(
  shape: AxisEdge,
  discs: DiscGroups,
  component: number,
  radius: number,
): [number, number] {
  const top = shape.shareOf(radius);
  // of a straight edge a disc covers one stretch
  const isStraight = shape.kind !== 'segment-vertex';
  const discAt = (share: number): number => {
    shape.atShare(share);
    return discs.covering(component, shape.x, shape.y);
  };
  const lowDisc = discAt(0);
  const highDisc = discAt(top);
  /** How far a disc that covers one end of what is left covers it, towards the other end. */
  const leaves = (disc: number, from: number, towards: number): number => {
    let covered = from;
    let open = towards;
    shape.atShare(towards);
    if (isStraight && discs.covers(disc, shape.x, shape.y)) {
      return towards;
    }
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (covered + open) / 2;
      shape.atShare(middle);
      if (discs.covers(disc, shape.x, shape.y)) {
        covered = middle;
      } else {
        open = middle;
      }
    }
    return open;
  };
  /** Where the first gap begins from one end towards the other, from disc to disc. */
  const gapFrom = (first: number, from: number, towards: number): number => {
    let at = from;
    for (let disc = first; disc >= 0 && at !== towards; ) {
      const open = leaves(disc, at, towards);
      disc = open === at || Math.abs(towards - open) <= GAP_REL_TOL * top ? -1 : discAt(open);
      at = open;
    }
    return Math.abs(towards - at) <= GAP_REL_TOL * top ? towards : at;
  };
  const low = gapFrom(lowDisc, 0, top);
  return low === top ? [0, 0] : [low, gapFrom(highDisc, top, 0)];
}

/** The discs at the crossings of each narrow part, by place. */
class DiscGroups {
  readonly #crossings: LevelCrossings;
  readonly #groups = new Map<number, number[]>();
  readonly #near = new Map<number, NearCentres>();

  constructor(crossings: LevelCrossings, partOf: (crossing: number) => number) {
    this.#crossings = crossings;
    for (let k = 0; k < crossings.edge.length; k++) {
      pollStep();
      const component = partOf(k);
      const group = this.#groups.get(component);
      if (group === undefined) {
        this.#groups.set(component, [k]);
      } else {
        group.push(k);
      }
    }
    for (const [component, group] of this.#groups) {
      pollStep();
      const x = group.map((k) => crossings.x[k]);
      const y = group.map((k) => crossings.y[k]);
      this.#near.set(component, new NearCentres(x, y));
    }
  }

  /** Whether the disc at a crossing covers the point. */
  covers(crossing: number, px: number, py: number): boolean {
    const { x, y, radius } = this.#crossings;
    return (x[crossing] - px) ** 2 + (y[crossing] - py) ** 2 <= radius * radius;
  }

  /** The crossing of this narrow part that is nearest to the point, if its disc covers it; -1 for none. */
  covering(component: number, px: number, py: number): number {
    const nearest = this.#near.get(component)?.nearest(px, py) ?? -1;
    const crossing = nearest < 0 ? -1 : (this.#groups.get(component)?.[nearest] ?? -1);
    return crossing >= 0 && this.covers(crossing, px, py) ? crossing : -1;
  }
}
