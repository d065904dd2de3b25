/**
 * The segments that a vertical sweep line meets, from small y to large: a treap with parent links, threaded by `below` and `above`,
 * so that neighbours and removal need no comparison. The order is the caller's business.
 */
export class SweepStatus {
  /** Next segment towards smaller y, −1 for none; meaningful while the segment is in. */
  readonly below: number[] = [];
  /** Next segment towards larger y, −1 for none. */
  readonly above: number[] = [];
  readonly #left: number[] = [];
  readonly #right: number[] = [];
  readonly #parent: number[] = [];
  readonly #priority: number[] = [];
  readonly #isIn: boolean[] = [];
  #root = -1;
  #lowest = -1;
  #seed = 0x2545f491;

  /** Makes room for one more segment, numbered in order. */
  addSlot(): void {
    // xorshift: the tree needs spread, not secrecy, and equal runs must give equal results
    this.#seed ^= this.#seed << 13;
    this.#seed ^= this.#seed >>> 17;
    this.#seed ^= this.#seed << 5;
    this.#priority.push(this.#seed);
    this.below.push(-1);
    this.above.push(-1);
    this.#left.push(-1);
    this.#right.push(-1);
    this.#parent.push(-1);
    this.#isIn.push(false);
  }

  /** Whether the sweep line meets segment s now. */
  has(s: number): boolean {
    return this.#isIn[s];
  }

  /** The segment with the smallest y, −1 when empty. */
  lowest(): number {
    return this.#lowest;
  }

  /** The last segment, from below, for which `isUnder` holds (it must hold for a run from below); −1 when for none. */
  lastUnder(isUnder: (s: number) => boolean): number {
    let at = this.#root;
    let found = -1;
    while (at >= 0) {
      if (isUnder(at)) {
        found = at;
        at = this.#right[at];
      } else {
        at = this.#left[at];
      }
    }
    return found;
  }

  /** Puts s in directly above `lower`, or lowest of all when that is −1. */
  insertAbove(lower: number, s: number): void {
    this.#isIn[s] = true;
    this.#left[s] = -1;
    this.#right[s] = -1;
    const upper = lower < 0 ? this.#lowest : this.above[lower];
    this.below[s] = lower;
    this.above[s] = upper;
    if (upper >= 0) {
      this.below[upper] = s;
    }
    if (lower >= 0) {
      this.above[lower] = s;
    } else {
      this.#lowest = s;
    }
    // of two neighbours one has no child on the side of the other
    if (lower >= 0 && this.#right[lower] < 0) {
      this.#right[lower] = s;
      this.#parent[s] = lower;
    } else if (upper >= 0) {
      this.#left[upper] = s;
      this.#parent[s] = upper;
    } else {
      this.#parent[s] = -1;
      this.#root = s;
    }
    while (this.#parent[s] >= 0 && this.#priority[this.#parent[s]] < this.#priority[s]) {
      this.#rotateUp(s);
    }
  }

  /** Takes s out. */
  remove(s: number): void {
    while (this.#left[s] >= 0 && this.#right[s] >= 0) {
      const l = this.#left[s];
      const r = this.#right[s];
      this.#rotateUp(this.#priority[l] > this.#priority[r] ? l : r);
    }
    const child = this.#left[s] >= 0 ? this.#left[s] : this.#right[s];
    this.#replaceChild(this.#parent[s], s, child);
    const lower = this.below[s];
    const upper = this.above[s];
    if (lower >= 0) {
      this.above[lower] = upper;
    } else {
      this.#lowest = upper;
    }
    if (upper >= 0) {
      this.below[upper] = lower;
    }
    this.#isIn[s] = false;
  }

  #rotateUp(s: number): void {
    const parent = this.#parent[s];
    const grand = this.#parent[parent];
    if (this.#left[parent] === s) {
      this.#adopt(parent, this.#right[s], true);
      this.#right[s] = parent;
    } else {
      this.#adopt(parent, this.#left[s], false);
      this.#left[s] = parent;
    }
    this.#parent[parent] = s;
    this.#replaceChild(grand, parent, s);
  }

  #adopt(parent: number, child: number, left: boolean): void {
    if (left) {
      this.#left[parent] = child;
    } else {
      this.#right[parent] = child;
    }
    if (child >= 0) {
      this.#parent[child] = parent;
    }
  }

  #replaceChild(parent: number, old: number, child: number): void {
    if (parent < 0) {
      this.#root = child;
    } else if (this.#left[parent] === old) {
      this.#left[parent] = child;
    } else {
      this.#right[parent] = child;
    }
    if (child >= 0) {
      this.#parent[child] = parent;
    }
  }
}
