import { type Point, pollStep } from '@pourproof/plane';
import type { Boundary } from './boundary.ts';
import { type EdgeRuns, edgeRuns } from './edge-runs.ts';
import { lengthOfHalves } from './length-of-halves.ts';
import { BOX_STRIDE, emptyTree, type ObbTree } from './obb-tree-layout.ts';
import { selectByKey } from './select-by-key.ts';
import { sizeClasses } from './size-classes.ts';
import { SlantedSides } from './slanted-sides.ts';

/** The tree over all edges of a boundary; O(n log n), each box as tight as its direction allows. */
export function obbTree(boundary: Boundary): ObbTree {
  return new TreeMaker(boundary, edgeRuns(boundary)).make();
}

/** The least power of two that is no less than a count. */
function powerOfTwo(count: number): number {
  let power = 1;
  while (power < count) {
    power *= 2;
  }
  return power;
}

/**
 * Halves of a node are told apart along one direction of its box, by the middles of its runs. Where runs are
 * so long that halves along it would still be more than this share of the whole longer than those across it,
 * they are told apart across (our choice).
 */
const CLEARLY_LESS = 0.15;

/** Of fewer runs than these the halves are judged by their middles alone (our choice). */
const FEW_RUNS = 8;

/** A direction is chosen by so many runs of a node, at even steps (our choice). */
const SAMPLE = 16;
/** Nodes whose runs are about as long as they are: their middles spread over less than this share of them (our choice). */
const LONG_SHARE = 0.5;

class TreeMaker {
  readonly #boundary: Boundary;
  readonly #tree: ObbTree;
  readonly #runs: EdgeRuns;
  /** Ends of classes of runs by size in the order. */
  readonly #classEnds: readonly number[];
  /** Runs in the order of leaves, as far as they have been told apart. */
  readonly #order: Int32Array;
  /** Of each run: middle, unit direction, half extents along it and across it. */
  readonly #runBox: Float64Array;
  readonly #keys: Float64Array;
  readonly #slanted: SlantedSides;
  #ux = 1;
  #uy = 0;
  /**
   * Of the node that is looked at, along the direction and across it: its extents, then its middle; and the
   * extents of the middles of its runs.
   */
  readonly #whole = new Float64Array(4);
  readonly #middles = new Float64Array(2);

  constructor(boundary: Boundary, runs: EdgeRuns) {
    const { count, from, to } = runs;
    this.#boundary = boundary;
    this.#runs = runs;
    this.#order = new Int32Array(count).map((_, r) => r);
    this.#runBox = new Float64Array(count * BOX_STRIDE);
    this.#keys = new Float64Array(count);
    for (let r = 0; r < count; r++) {
      pollStep();
      this.#fitRun(r, from[r], to[r]);
    }
    const sizes = new Float64Array(count);
    for (let r = 0; r < count; r++) {
      pollStep();
      sizes[r] = Math.max(this.#runBox[r * BOX_STRIDE + 4], this.#runBox[r * BOX_STRIDE + 5]);
    }
    this.#classEnds = sizeClasses(sizes, this.#order);
    this.#tree = emptyTree(runs, this.#leavesNeeded());
    this.#slanted = new SlantedSides(boundary, this.#tree, this.#order);
  }

  make(): ObbTree {
    this.#splitClasses(1, 0);
    return this.#tree;
  }

  /** Leaves that are needed where each class but the last has a subtree of its own beside that of all later ones. */
  #leavesNeeded(): number {
    const ends = this.#classEnds;
    return Math.max(
      ...ends.map((end, c) => {
        const count = end - (ends[c - 1] ?? 0);
        return powerOfTwo(count) * 2 ** Math.min(c + 1, ends.length - 1);
      }),
    );
  }

  /** Makes the nodes from `node` down for all runs of class c and later ones. */
  #splitClasses(node: number, c: number): void {
    const ends = this.#classEnds;
    const low = ends[c - 1] ?? 0;
    if (c === ends.length - 1) {
      this.#split(node, low, ends[c]);
      return;
    }
    this.#bound(node, low, this.#order.length);
    this.#split(2 * node, low, ends[c]);
    this.#splitClasses(2 * node + 1, c + 1);
  }

  /** Makes the nodes from `node` down for the runs in places `low` … `high − 1` of the order. */
  #split(node: number, low: number, high: number): void {
    pollStep();
    const { leafStart, leafFrom, leafTo, leafOfRun, runs } = this.#tree;
    if (node >= leafStart) {
      if (high > low) {
        const r = this.#order[low];
        leafFrom[node - leafStart] = runs.from[r];
        leafTo[node - leafStart] = runs.to[r];
        leafOfRun[r] = node;
        this.#copy(r, node);
        this.#slanted.give(node, low, high);
      }
      return;
    }
    if (high - low === 1) {
      this.#copy(this.#order[low], node);
      this.#split(2 * node, low, high);
      return;
    }
    if (high === low) {
      return;
    }
    this.#bound(node, low, high);
    const isAcross = this.#isBetterAcross(low, high);
    const middle = (low + high + 1) >> 1;
    this.#sortOut(low, middle, high, isAcross ? -this.#uy : this.#ux, isAcross ? this.#ux : this.#uy);
    this.#split(2 * node, low, middle);
    this.#split(2 * node + 1, middle, high);
  }

  /** Gives a node its box, and slanted sides where they fit closer. */
  #bound(node: number, low: number, high: number): void {
    const { boxes } = this.#tree;
    this.#chooseDirection(low, high);
    this.#measure(low, high, 1);
    if (this.#middles[0] >= LONG_SHARE * this.#whole[0]) {
      this.#write(boxes, node * BOX_STRIDE);
    } else {
      this.#fit(low, high, boxes, node * BOX_STRIDE);
      this.#slanted.give(node, low, high);
    }
  }

  /** Copies the box of a run to a node. */
  #copy(r: number, node: number): void {
    const { boxes } = this.#tree;
    for (let k = 0; k < BOX_STRIDE; k++) {
      boxes[node * BOX_STRIDE + k] = this.#runBox[r * BOX_STRIDE + k];
    }
  }

  /** Fits the box of a run along its chord or along its longest edge, whichever makes it smaller. */
  #fitRun(r: number, from: number, to: number): void {
    const { x, y, tx, ty, length, next } = this.#boundary;
    const box = this.#runBox;
    const at = r * BOX_STRIDE;
    const end = next[to - 1];
    const dx = x[end] - x[from];
    const dy = y[end] - y[from];
    const chord = Math.sqrt(dx * dx + dy * dy);
    let longest = from;
    for (let e = from + 1; e < to; e++) {
      longest = length[e] > length[longest] ? e : longest;
    }
    this.#ux = tx[longest];
    this.#uy = ty[longest];
    this.#fit(r, r + 1, box, at);
    if (chord > 0) {
      const area = box[at + 4] * box[at + 5];
      this.#ux = dx / chord;
      this.#uy = dy / chord;
      this.#fit(r, r + 1, box, at);
      if (box[at + 4] * box[at + 5] > area) {
        this.#ux = tx[longest];
        this.#uy = ty[longest];
        this.#fit(r, r + 1, box, at);
      }
    }
  }

  /**
   * Chooses the direction of a box: that of the edges, as a mean of doubled angles, or that in which the middles
   * of the runs lie, whichever makes the smaller box. The first serves teeth side by side, the second walls
   * made of teeth.
   */
  #chooseDirection(low: number, high: number): void {
    const order = this.#order;
    const runBox = this.#runBox;
    const x0 = runBox[order[low] * BOX_STRIDE];
    const y0 = runBox[order[low] * BOX_STRIDE + 1];
    const step = Math.max(1, Math.floor((high - low) / SAMPLE));
    let n = 0;
    let cos2 = 0;
    let sin2 = 0;
    let sx = 0;
    let sy = 0;
    let sxx = 0;
    let sxy = 0;
    let syy = 0;
    for (let k = low; k < high; k += step) {
      n++;
      const at = order[k] * BOX_STRIDE;
      const ux = runBox[at + 2];
      const uy = runBox[at + 3];
      const slender = runBox[at + 4] - runBox[at + 5];
      cos2 += slender * (ux * ux - uy * uy);
      sin2 += slender * 2 * ux * uy;
      const dx = runBox[at] - x0;
      const dy = runBox[at + 1] - y0;
      sx += dx;
      sy += dy;
      sxx += dx * dx;
      sxy += dx * dy;
      syy += dy * dy;
    }
    const alongEdges = Math.atan2(sin2, cos2) / 2;
    this.#turn(alongEdges);
    const area = this.#measure(low, high, step);
    this.#turn(Math.atan2(2 * (sxy - (sx * sy) / n), sxx - (sx * sx) / n - (syy - (sy * sy) / n)) / 2);
    if (this.#measure(low, high, step) > area) {
      this.#turn(alongEdges);
    }
  }

  #turn(angle: number): void {
    this.#ux = Math.cos(angle);
    this.#uy = Math.sin(angle);
  }

  /** Measures the extents of every so manieth run of a node along the direction and across it; their area. */
  #measure(low: number, high: number, step: number): number {
    const order = this.#order;
    const runBox = this.#runBox;
    const ux = this.#ux;
    const uy = this.#uy;
    let minU = Infinity;
    let maxU = -Infinity;
    let minV = Infinity;
    let maxV = -Infinity;
    let minMiddleU = Infinity;
    let maxMiddleU = -Infinity;
    let minMiddleV = Infinity;
    let maxMiddleV = -Infinity;
    for (let k = low; k < high; k += step) {
      const at = order[k] * BOX_STRIDE;
      const u = runBox[at] * ux + runBox[at + 1] * uy;
      const v = runBox[at + 1] * ux - runBox[at] * uy;
      const c = Math.abs(runBox[at + 2] * ux + runBox[at + 3] * uy);
      const s = Math.abs(runBox[at + 3] * ux - runBox[at + 2] * uy);
      const halfU = c * runBox[at + 4] + s * runBox[at + 5];
      const halfV = s * runBox[at + 4] + c * runBox[at + 5];
      if (u - halfU < minU) {
        minU = u - halfU;
      }
      if (u + halfU > maxU) {
        maxU = u + halfU;
      }
      if (v - halfV < minV) {
        minV = v - halfV;
      }
      if (v + halfV > maxV) {
        maxV = v + halfV;
      }
      if (u < minMiddleU) {
        minMiddleU = u;
      }
      if (u > maxMiddleU) {
        maxMiddleU = u;
      }
      if (v < minMiddleV) {
        minMiddleV = v;
      }
      if (v > maxMiddleV) {
        maxMiddleV = v;
      }
    }
    const whole = this.#whole;
    whole[0] = maxU - minU;
    whole[1] = maxV - minV;
    whole[2] = (minU + maxU) / 2;
    whole[3] = (minV + maxV) / 2;
    this.#middles[0] = maxMiddleU - minMiddleU;
    this.#middles[1] = maxMiddleV - minMiddleV;
    return whole[0] * whole[1];
  }

  /** Writes the box as measured. */
  #write(boxes: Float64Array, at: number): void {
    const u = this.#whole[2];
    const v = this.#whole[3];
    boxes[at] = u * this.#ux - v * this.#uy;
    boxes[at + 1] = u * this.#uy + v * this.#ux;
    boxes[at + 2] = this.#ux;
    boxes[at + 3] = this.#uy;
    boxes[at + 4] = this.#whole[0] / 2;
    boxes[at + 5] = this.#whole[1] / 2;
  }

  /**
   * Whether a node is better told apart across its direction than along it: where its halves come out clearly shorter, as far as a sample
   * shows. Long runs side by side whose middles are scattered along them, as spikes of any length, overlap when told apart by that.
   */
  #isBetterAcross(low: number, high: number): boolean {
    const whole = this.#whole;
    if (high - low < FEW_RUNS) {
      const along = whole[0] > 0 ? 1 - this.#middles[0] / (2 * whole[0]) : 1;
      const across = whole[1] > 0 ? 1 - this.#middles[1] / (2 * whole[1]) : 1;
      return Math.abs(along - across) > CLEARLY_LESS ? across < along : whole[1] > whole[0];
    }
    const along = whole[0] > 0 ? this.#halves(low, high, [this.#ux, this.#uy], whole[2]) / whole[0] : 2;
    const across = whole[1] > 0 ? this.#halves(low, high, [-this.#uy, this.#ux], whole[3]) / whole[1] : 2;
    return Math.abs(along - across) > 2 * CLEARLY_LESS ? across < along : whole[1] > whole[0];
  }

  #halves(low: number, high: number, direction: Point, middle: number): number {
    const step = Math.max(1, Math.floor((high - low) / SAMPLE));
    return lengthOfHalves({ order: this.#order, runBox: this.#runBox, low, high, step }, direction, middle);
  }

  /** Puts the runs with the lower middles along a direction in front of place `middle` of the order. */
  #sortOut(low: number, middle: number, high: number, dx: number, dy: number): void {
    const order = this.#order;
    const runBox = this.#runBox;
    const keys = this.#keys;
    for (let k = low; k < high; k++) {
      const at = order[k] * BOX_STRIDE;
      keys[k] = runBox[at] * dx + runBox[at + 1] * dy;
    }
    selectByKey(keys, order, low, middle, high);
  }

  /** Writes the box around the runs in places `low` … `high − 1` of the order, along the direction turned to. */
  #fit(low: number, high: number, boxes: Float64Array, at: number): void {
    const { x, y, next } = this.#boundary;
    const { from, to } = this.#runs;
    const ux = this.#ux;
    const uy = this.#uy;
    const first = from[this.#order[low]];
    const x0 = x[first];
    const y0 = y[first];
    let minU = 0;
    let maxU = 0;
    let minV = 0;
    let maxV = 0;
    for (let k = low; k < high; k++) {
      const r = this.#order[k];
      const end = to[r];
      for (let i = from[r]; i <= end; i++) {
        const j = i < end ? i : next[end - 1];
        const dx = x[j] - x0;
        const dy = y[j] - y0;
        const u = dx * ux + dy * uy;
        const v = dy * ux - dx * uy;
        if (u < minU) {
          minU = u;
        }
        if (u > maxU) {
          maxU = u;
        }
        if (v < minV) {
          minV = v;
        }
        if (v > maxV) {
          maxV = v;
        }
      }
    }
    const u = (minU + maxU) / 2;
    const v = (minV + maxV) / 2;
    boxes[at] = x0 + u * ux - v * uy;
    boxes[at + 1] = y0 + u * uy + v * ux;
    boxes[at + 2] = ux;
    boxes[at + 3] = uy;
    boxes[at + 4] = (maxU - minU) / 2;
    boxes[at + 5] = (maxV - minV) / 2;
  }
}
