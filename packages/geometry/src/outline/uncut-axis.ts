import { AxisEdge } from '../measure/axis-edge.ts';
import { CORNER, STROKE, type StrokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { LevelCrossings } from './level-crossings.ts';
import type { NarrowParts } from './narrow-parts.ts';

/** What no disc of the cutter covers of the axis in one narrow part. */
export interface UncutAxis {
  /** Largest clearance on it, mm, and where that is, relative to the axis' origin. */
  clearance: number;
  x: number;
  y: number;
  /** Its length, and the lengths of what carries stroke and taper, mm. */
  length: number;
  strokeLength: number;
  taperLength: number;
  /** Sums of length times half the width, over all of it and over what carries stroke or taper, mm². */
  swept: number;
  strokeSwept: number;
  /** Least clearance of what carries stroke; infinite where nothing does. */
  narrowest: number;
  /** Least clearance at the waists of the narrow part, covered or not, mm; infinite where it has none. */
  least: number;
}

/** Bisection steps that find where an edge leaves a disc: to 2⁻⁴⁰ of the edge. */
const HALVINGS = 40;
/** Points at which an edge between two discs is tested for a gap. */
const PROBES = 16;

/**
 * For each narrow part, numbered as in `parts`, what the discs at its crossings leave uncovered of its axis.
 */
export function uncutAxis(
  axis: MedialAxis,
  crossings: LevelCrossings,
  parts: NarrowParts,
  { part, start }: StrokeParts,
): Map<number, UncutAxis> {
  const { edgeFrom, nodeR, nodeX, nodeY, bottleneckCount } = axis;
  const discs = new DiscGroups(crossings, (k) => parts.of(crossings.edge[k]));
  const shape = new AxisEdge(axis);
  const found = new Map<number, UncutAxis>();
  for (let e = 0; e < edgeFrom.length; e++) {
    const from = edgeFrom[e];
    if (nodeR[from] >= crossings.radius || shape.isSecondary(e)) {
      continue;
    }
    const component = parts.of(e);
    let sum = found.get(component);
    if (sum === undefined) {
      sum = { ...NOTHING, clearance: nodeR[from], x: nodeX[from], y: nodeY[from] };
      found.set(component, sum);
    }
    if (from < bottleneckCount) {
      sum.least = Math.min(sum.least, nodeR[from]);
    }
    shape.load(e);
    const [low, high] = uncutShares(shape, discs, component, crossings.radius);
    if (high > low) {
      const whole = sweep(shape, low, high);
      sum.length += whole.length;
      sum.swept += whole.swept;
      if (part[e] !== CORNER && start[e] < high) {
        const { length, swept, lowest } = sweep(shape, Math.max(low, start[e]), high);
        sum.strokeSwept += swept;
        if (part[e] === STROKE) {
          sum.strokeLength += length;
          sum.narrowest = Math.min(sum.narrowest, lowest);
        } else {
          sum.taperLength += length;
        }
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

const NOTHING = {
  length: 0,
  strokeLength: 0,
  taperLength: 0,
  swept: 0,
  strokeSwept: 0,
  narrowest: Number.POSITIVE_INFINITY,
  least: Number.POSITIVE_INFINITY,
};

/** Length of the loaded edge between two shares, the clearance at the lower, and the area on one side, taken as a trapezium. */
function sweep(
  shape: AxisEdge,
  low: number,
  high: number,
): { length: number; swept: number; lowest: number } {
  const length = shape.lengthBetween(low, high);
  shape.atShare(high);
  const highest = shape.clearance;
  shape.atShare(low);
  const lowest = shape.clearance;
  return { length, swept: (length * (lowest + highest)) / 2, lowest };
}

/** The shares of the edge, from its low end, between which no disc covers it. */
function uncutShares(
  shape: AxisEdge,
  discs: DiscGroups,
  component: number,
  radius: number,
): [number, number] {
  const top = shape.shareOf(radius);
  const discAt = (share: number): number => {
    shape.atShare(share);
    return discs.covering(component, shape.x, shape.y);
  };
  const lowDisc = discAt(0);
  const highDisc = discAt(top);
  let inside = lowDisc < 0 ? 0 : top;
  if (lowDisc >= 0 && highDisc >= 0) {
    // one disc that covers both ends covers the edge; two discs may leave a gap
    const probes = lowDisc === highDisc ? 0 : PROBES;
    inside = -1;
    for (let k = 1; k < probes && inside < 0; k++) {
      inside = discAt((top * k) / probes) < 0 ? (top * k) / probes : -1;
    }
    if (inside < 0) {
      return [0, 0];
    }
  }
  const edgeOfGap = (covered: number): number => {
    let out = covered;
    let open = inside;
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (out + open) / 2;
      if (discAt(middle) >= 0) {
        out = middle;
      } else {
        open = middle;
      }
    }
    return open;
  };
  return [lowDisc < 0 ? 0 : edgeOfGap(0), highDisc < 0 ? top : edgeOfGap(top)];
}

/** The discs at the crossings of each narrow part, sorted by x. */
class DiscGroups {
  readonly #crossings: LevelCrossings;
  readonly #groups = new Map<number, number[]>();

  constructor(crossings: LevelCrossings, partOf: (crossing: number) => number) {
    this.#crossings = crossings;
    for (let k = 0; k < crossings.edge.length; k++) {
      const component = partOf(k);
      const group = this.#groups.get(component);
      if (group === undefined) {
        this.#groups.set(component, [k]);
      } else {
        group.push(k);
      }
    }
    for (const group of this.#groups.values()) {
      group.sort((a, b) => crossings.x[a] - crossings.x[b]);
    }
  }

  /** A crossing of this narrow part whose disc covers the point; -1 for none. */
  covering(component: number, px: number, py: number): number {
    const { x, y, radius } = this.#crossings;
    const group = this.#groups.get(component) ?? [];
    let low = 0;
    let high = group.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (x[group[middle]] < px - radius) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    for (let i = low; i < group.length && x[group[i]] <= px + radius; i++) {
      const dx = x[group[i]] - px;
      const dy = y[group[i]] - py;
      if (dx * dx + dy * dy <= radius * radius) {
        return group[i];
      }
    }
    return -1;
  }
}
