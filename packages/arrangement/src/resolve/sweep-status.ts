/**
 * The segments that a vertical sweep line meets, by rising y: a treap (Seidel and Aragon 1996) with parent
 * links, threaded by `below` and `above`, so that neighbours and removal need no comparison. The caller keeps
 * the order.
 */
export class SweepStatus {
  /**
   * Next segment towards smaller y, −1 for none; valid while the segment is in. The array is replaced when it
   * grows.
   */
  below: Int32Array;
  /** Next segment towards larger y, −1 for none. */
  above: Int32Array;
  #left: Int32Array;
  #right: Int32Array;
  #parent: Int32Array;
  #priority: Int32Array;
  #isIn: Uint8Array;
  #size = 0;
  #root = -1;
  #lowest = -1;
  #seed = 0x2545f491;

  /**
   * @param expected roughly how many segments there will be
   */
  constructor(expected = 0) {
    const capacity = Math.max(64, expected + (expected >> 2));
    this.below = new Int32Array(capacity);
    this.above = new Int32Array(capacity);
    this.#left = new Int32Array(capacity);
    this.#right = new Int32Array(capacity);
    this.#parent = new Int32Array(capacity);
    this.#priority = new Int32Array(capacity);
    this.#isIn = new Uint8Array(capacity);
  }

  /** Makes room for one more segment; segments are numbered in order. */
  addSlot(): void {
    const s = this.#size++;
    if (s === this.below.length) {
      this.#grow();
    }
    // xorshift with a fixed seed: equal input must give equal results
    this.#seed ^= this.#seed << 13;
    this.#seed ^= this.#seed >>> 17;
    this.#seed ^= this.#seed << 5;
    this.#priority[s] = this.#seed;
    this.below[s] = -1;
    this.above[s] = -1;
  }

  /** Whether segment s is in. */
  has(s: number): boolean {
    return this.#isIn[s] === 1;
  }

  /** The segment with the smallest y, −1 when empty. */
  lowest(): number {
    return this.#lowest;
  }

  /** The highest segment for which `isUnder` holds, which must hold for all below it as well; −1 for none. */
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

  /** Inserts s directly above `lower`, or lowest of all when that is −1. */
  insertAbove(lower: number, s: number): void {
    this.#isIn[s] = 1;
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
    // of two neighbours, one has no child on the side of the other
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

  /** Removes s. */
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
    this.#isIn[s] = 0;
  }

  #grow(): void {
    this.below = doubled(this.below);
    this.above = doubled(this.above);
    this.#left = doubled(this.#left);
    this.#right = doubled(this.#right);
    this.#parent = doubled(this.#parent);
    this.#priority = doubled(this.#priority);
    const isIn = new Uint8Array(2 * this.#isIn.length);
    isIn.set(this.#isIn);
    this.#isIn = isIn;
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

function doubled(list: Int32Array): Int32Array {
  const out = new Int32Array(2 * list.length);
  out.set(list);
  return out;
}
