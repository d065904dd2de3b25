import { AxisEdge } from '../measure/axis-edge.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { heightAt } from './cutter.ts';
import { type ContactSide, EdgeCells } from './edge-cells.ts';
import type { FollowProfile } from './follow-profile.ts';
import { risingEdges } from './rising-axis.ts';

/** Gauss's rule with five points on 0 … 1: nodes and weights (from memory; a test checks them by closed forms of volumes). */
const NODES = [0.046910077030668, 0.2307653449471585, 0.5, 0.7692346550528415, 0.953089922969332];
const WEIGHTS = [
  0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945,
];
/** Steps by which the best centre is refined on its edge: 0.62^24 of it. */
const REFINEMENTS = 24;
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
    for (let k = 0; k < REFINEMENTS; k++) {
      const left = high - GOLDEN * (high - low);
      const right = low + GOLDEN * (high - low);
      if (this.#from(x, y, edge, left) < this.#from(x, y, edge, right)) {
        low = left;
      } else {
        high = right;
      }
    }
    return this.#from(x, y, edge, (low + high) / 2);
  }

  #from(x: number, y: number, edge: number, share: number): number {
    const above = this.#above;
    above.load(edge);
    above.atShare(share);
    const distance = Math.hypot(above.x - x, above.y - y);
    return this.#profile.tipDepth(above.clearance) - heightAt(this.#profile.cutter, distance);
  }
}
