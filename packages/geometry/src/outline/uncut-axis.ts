import { AxisEdge } from '../measure/axis-edge.ts';
import { CORNER, type StrokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { LevelCrossings } from './level-crossings.ts';
import type { NarrowParts } from './narrow-parts.ts';

/** The part of the axis in one narrow part that no disc of the cutter covers. */
export interface UncutAxis {
  /** Largest clearance on it, and where; relative to the axis' origin. */
  clearance: number;
  x: number;
  y: number;
  /** Length of it, and of what of it carries stroke or taper, mm. */
  length: number;
  strokeLength: number;
}

/** Steps of halving by which the place is found where an edge leaves a disc: 2^-40 of the edge. */
const HALVINGS = 40;
/** Places at which an edge between two discs is looked at for a gap. */
const PROBES = 16;

/** For each narrow part, named as in `parts`, what the discs at its crossings do not cover of its axis. */
export function uncutAxis(
  axis: MedialAxis,
  crossings: LevelCrossings,
  parts: NarrowParts,
  { part, start }: StrokeParts,
): Map<number, UncutAxis> {
  const { edgeFrom, nodeR, nodeX, nodeY } = axis;
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
      sum = { clearance: nodeR[from], x: nodeX[from], y: nodeY[from], length: 0, strokeLength: 0 };
      found.set(component, sum);
    }
    shape.load(e);
    const [low, high] = uncutShares(shape, discs, component, crossings.radius);
    if (high > low) {
      const length = shape.lengthBetween(low, high);
      sum.length += length;
      if (part[e] !== CORNER && start[e] < high) {
        sum.strokeLength += shape.lengthBetween(Math.max(low, start[e]), high);
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

/** From and to which share of the way up the edge no disc covers it. */
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
    // a disc that covers both ends covers all between; two discs may leave a gap
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

  /** A crossing of this narrow part whose disc covers the point, or -1. */
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
