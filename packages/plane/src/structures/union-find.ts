/**
 * Disjoint sets of the items 0, 1, 2, … that grow by joining. A set is named by its least item, so that names
 * do not depend on the order of joins.
 *
 * Path halving, O(log n) amortised: Tarjan and van Leeuwen (1984), Worst-case analysis of set union
 * algorithms.
 *
 * @example
 * const sets = new UnionFind(4);
 * sets.join(1, 3); // true
 * sets.find(3); // 1
 */
export class UnionFind {
  readonly #parent: number[];

  /**
   * @param count how many items there are to begin with, each in a set of its own
   */
  constructor(count = 0) {
    this.#parent = new Array<number>(count);
    for (let item = 0; item < count; item++) {
      this.#parent[item] = item;
    }
  }

  /** Adds an item in a set of its own; its number. */
  add(): number {
    return this.#parent.push(this.#parent.length) - 1;
  }

  /** The name of the set that an item is in. */
  find(item: number): number {
    const parent = this.#parent;
    let at = item;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  /** Makes the sets of two items one; whether they were two. */
  join(a: number, b: number): boolean {
    const i = this.find(a);
    const j = this.find(b);
    this.#parent[Math.max(i, j)] = Math.min(i, j);
    return i !== j;
  }
}
