import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { BoxIndex } from '@pourproof/plane';
import { heightAt } from '../cutters/cutter.ts';
import type { FollowingProfile } from '../following/following-profile.ts';
import { axisEdgeBox } from './axis-edge-box.ts';

/** Places looked at along an axis edge before the best is refined. */
const PROBES = 6;
/** Steps by which the best place is refined: 0.62^40 of the stretch between its neighbours. */
const REFINEMENTS = 40;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Depth at points of a cut by a following cutter, as the most that it cuts there from any centre. Only centres on the axis count: moved away from the
 * nearest wall, a cutter that touches it with convex flanks cuts no less anywhere.
 */
export class DeepestCentre {
  readonly #profile: FollowingProfile;
  readonly #edge: AxisEdge;
  readonly #index: BoxIndex;
  /** Axis edge of each item of the index. */
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

  /** Depth at a point, relative to the axis' origin, given one that is surely cut there. */
  depthAt(x: number, y: number, atLeast: number): number {
    const { cutter, reachMm } = this.#profile;
    let best = atLeast;
    const most = (distance: number, clearance: number): number =>
      distance > reachMm
        ? -Infinity
        : this.#profile.tipDepth(Math.min(clearance, reachMm)) - heightAt(cutter, distance);
    this.#index.visitNear(
      x,
      y,
      (distance, clearance) => most(distance, clearance) > best,
      (item) => {
        this.#edge.load(this.#edges[item]);
        best = Math.max(best, this.#alongEdge(x, y, most));
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
    const seen = Array.from({ length: PROBES + 1 }, (_, k) => at(k / PROBES));
    const best = seen.indexOf(Math.max(...seen));
    let low = Math.max(0, best - 1) / PROBES;
    let high = Math.min(PROBES, best + 1) / PROBES;
    for (let k = 0; k < REFINEMENTS; k++) {
      const left = high - GOLDEN * (high - low);
      const right = low + GOLDEN * (high - low);
      if (at(left) < at(right)) {
        low = left;
      } else {
        high = right;
      }
    }
    return Math.max(seen[best], at((low + high) / 2));
  }
}
