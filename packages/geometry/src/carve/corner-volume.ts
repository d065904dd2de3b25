import { AxisEdge } from '../measure/axis-edge.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { heightAt } from './cutter.ts';
import { type ContactSide, EdgeCells } from './edge-cells.ts';
import type { FollowProfile } from './follow-profile.ts';
import { risingEdges } from './rising-axis.ts';

/** Gauss's rule with four points on 0 … 1: nodes and weights (from memory; a test compares volumes with sums over a grid). */
const NODES = [0.0694318442029737, 0.3300094782075719, 0.6699905217924281, 0.9305681557970263];
const WEIGHTS = [0.1739274225687269, 0.3260725774312731, 0.3260725774312731, 0.1739274225687269];
/** Steps by which the best centre is refined on its edge: 0.62^14 of it, and the depth changes with the square of that. */
const REFINEMENTS = 14;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Volume beside one axis edge of what a following cutter leaves where the clearance changes along the axis, as in corners: there it cuts deeper from
 * farther up the axis than from the contact's own normal. Summed over Gauss points of the cells, each with the best centre on the way up.
 */
export class CornerVolume {
  readonly #axis: MedialAxis;
  readonly #profile: FollowProfile;
  readonly #rising: Int32Array;
  readonly #edge: AxisEdge;
  readonly #cells: EdgeCells;
  readonly #above: AxisEdge;
  /** The edge that `#above` holds. */
  #loaded = -1;

  constructor(axis: MedialAxis, profile: FollowProfile) {
    this.#axis = axis;
    this.#profile = profile;
    this.#rising = risingEdges(axis);
    this.#edge = new AxisEdge(axis);
    this.#cells = new EdgeCells(axis, this.#edge);
    this.#above = new AxisEdge(axis);
  }

  /** Volume in mm³ beside the part of edge e with clearance up to `highMm`. */
  beside(e: number, highMm: number): number {
    const edge = this.#edge;
    edge.load(e);
    this.#cells.load();
    const top = highMm >= edge.r1 ? 1 : edge.shareOf(highMm);
    let sum = 0;
    for (let k = 0; k < NODES.length; k++) {
      const share = top * NODES[k];
      for (const side of this.#cells.sidesAt(share)) {
        edge.atShare(share);
        sum += WEIGHTS[k] * top * side.perShare * this.#acrossCell(e, share, side);
      }
    }
    return sum;
  }

  /** ∫ of the depth from the contact to the axis, weighted with the distance in a fan. */
  #acrossCell(e: number, share: number, { isFan, nx, ny }: ContactSide): number {
    const { x, y, clearance } = this.#edge;
    let sum = 0;
    for (let k = 0; k < NODES.length; k++) {
      const off = (1 - NODES[k]) * clearance;
      const depth = this.#depthAt(x - off * nx, y - off * ny, e, share);
      sum += WEIGHTS[k] * clearance * depth * (isFan ? NODES[k] * clearance : 1);
    }
    return sum;
  }

  /** The most that is cut at a point from centres on the way up from share `from` of edge e. */
  #depthAt(x: number, y: number, e: number, from: number): number {
    const { edgeTo } = this.#axis;
    let edge = e;
    let low = from;
    let best = this.#from(x, y, edge, from);
    let before: [number, number] | undefined;
    for (;;) {
      const atTop = this.#from(x, y, edge, 1);
      const next = this.#rising[edgeTo[edge]];
      if (atTop < best || next < 0) {
        best = Math.max(best, atTop, this.#refined(x, y, edge, low));
        return before === undefined ? best : Math.max(best, this.#refined(x, y, ...before));
      }
      best = atTop;
      before = [edge, low];
      edge = next;
      low = 0;
    }
  }

  #refined(x: number, y: number, edge: number, from: number): number {
    let low = from;
    let high = 1;
    let left = high - GOLDEN * (high - low);
    let right = low + GOLDEN * (high - low);
    let atLeft = this.#from(x, y, edge, left);
    let atRight = this.#from(x, y, edge, right);
    for (let k = 0; k < REFINEMENTS; k++) {
      if (atLeft < atRight) {
        [low, left, atLeft] = [left, right, atRight];
        right = low + GOLDEN * (high - low);
        atRight = this.#from(x, y, edge, right);
      } else {
        [high, right, atRight] = [right, left, atLeft];
        left = high - GOLDEN * (high - low);
        atLeft = this.#from(x, y, edge, left);
      }
    }
    return Math.max(atLeft, atRight);
  }

  #from(x: number, y: number, edge: number, share: number): number {
    const above = this.#above;
    if (edge !== this.#loaded) {
      above.load(edge);
      this.#loaded = edge;
    }
    above.atShare(share);
    const [dx, dy] = [above.x - x, above.y - y];
    const distance = Math.sqrt(dx * dx + dy * dy);
    return this.#profile.tipDepth(above.clearance) - heightAt(this.#profile.cutter, distance);
  }
}
