import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { BoxIndex } from '@pourproof/plane';
import { heightAt } from '../cutters/cutter.ts';
import type { FollowingProfile } from '../following/following-profile.ts';
import { axisEdgeBox } from './axis-edge-box.ts';

/** Shares of an axis edge at which the depth is sampled before the best is refined. */
const EVEN_SHARES: readonly number[] = Array.from({ length: 7 }, (_, k) => k / 6);
/** Steps of the golden-section search around the best sample: it narrows to 0.62^40 of an interval. */
const GOLDEN_STEPS = 40;
const GOLDEN_RATIO = (Math.sqrt(5) - 1) / 2;

/**
 * Depth at points of what a following cutter cuts: the greatest from any centre. Centres on the axis suffice:
 * a cutter with convex flanks that touches a wall and is moved away from it cuts no less anywhere.
 */
export class DeepestCentre {
  readonly #profile: FollowingProfile;
  readonly #edge: AxisEdge;
  readonly #index: BoxIndex;
  /** Axis edge of each item in the index. */
  readonly #edges: readonly number[];

  constructor(axis: MedialAxis, profile: FollowingProfile) {
    this.#profile = profile;
    this.#edge = new AxisEdge(axis);
    const edges: number[] = [];
    const boxes: number[] = [];
    const values: number[] = [];
    for (let e = 0; e < axis.edgeFrom.length; e++) {
      if (!this.#edge.isSecondary(e)) {
        this.#edge.load(e);
        edges.push(e);
        boxes.push(...axisEdgeBox(this.#edge));
        values.push(this.#edge.r1);
      }
    }
    this.#edges = edges;
    this.#index = new BoxIndex(Float64Array.from(boxes), Float64Array.from(values));
  }

  /** Depth at a point given relative to the axis' origin, at least `atLeast`. */
  depthAt(x: number, y: number, atLeast: number): number {
    const { cutter, reachMm } = this.#profile;
    let best = atLeast;
    const depthOf = (distance: number, clearance: number): number =>
      distance > reachMm
        ? -Infinity
        : this.#profile.tipDepth(Math.min(clearance, reachMm)) - heightAt(cutter, distance);
    this.#index.visitNear(
      x,
      y,
      (distance, clearance) => depthOf(distance, clearance) > best,
      (item) => {
        this.#edge.load(this.#edges[item]);
        best = Math.max(best, this.#alongEdge(x, y, depthOf));
      },
    );
    return best;
  }

  #alongEdge(x: number, y: number, depth: (distance: number, clearance: number) => number): number {
    const edge = this.#edge;
    const at = (share: number): number => {
      edge.atShare(share);
      return depth(Math.hypot(edge.x - x, edge.y - y), edge.clearance);
    };
    // below the clearance that a flat tip needs the depth is 0 or less, a plateau on which no search finds its way
    const from = edge.shareOf(this.#profile.tipFlatMm);
    // where the depth limit takes over from the flanks the depth has a cusp, which even samples may miss
    const cusp = edge.shareOf(this.#profile.reachMm);
    const even = EVEN_SHARES.map((share) => from + share * (1 - from));
    const shares = [...even.filter((share) => share < cusp), cusp, ...even.filter((share) => share > cusp)];
    const seen = shares.map(at);
    const best = seen.indexOf(Math.max(...seen));
    let low = shares[Math.max(0, best - 1)];
    let high = shares[Math.min(shares.length - 1, best + 1)];
    for (let k = 0; k < GOLDEN_STEPS; k++) {
      const left = high - GOLDEN_RATIO * (high - low);
      const right = low + GOLDEN_RATIO * (high - low);
      if (at(left) < at(right)) {
        low = left;
      } else {
        high = right;
      }
    }
    return Math.max(seen[best], at((low + high) / 2));
  }
}
