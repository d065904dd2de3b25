/**
 * Gives each point the number of its node: points within `snap` of a node's first point share it. Nodes count
 * from 0 in the order of their first points.
 *
 * Cost: O(n), however many points fall together: a cell of the hash holds the first points of nodes only.
 *
 * @param coords `[x0,y0,x1,y1,…]`
 */
export function pointNodes(coords: Float64Array, snap: number): { node: Int32Array; first: Int32Array } {
  const n = coords.length / 2;
  const node = new Int32Array(n);
  const first: number[] = [];
  const cells = new CellHash(n, snap);
  for (let i = 0; i < n; i++) {
    const x = coords[2 * i];
    const y = coords[2 * i + 1];
    let found = -1;
    cells.near(x, y, (j) => {
      const k = first[j];
      if (Math.hypot(coords[2 * k] - x, coords[2 * k + 1] - y) <= snap) {
        found = j;
        return true;
      }
      return false;
    });
    if (found < 0) {
      found = first.length;
      first.push(i);
      cells.add(x, y, found);
    }
    node[i] = found;
  }
  return { node, first: Int32Array.from(first) };
}

/** A spatial hash of items at points, with square cells. */
export class CellHash {
  private readonly size: number;
  private readonly heads: Int32Array;
  private readonly mask: number;
  private next: Int32Array;
  private items: Int32Array;
  private count = 0;

  /**
   * @param capacity expected number of items
   * @param size side of a cell; {@link near} sees everything within half of it
   */
  constructor(capacity: number, size: number) {
    let slots = 16;
    while (slots < 2 * capacity) {
      slots *= 2;
    }
    this.mask = slots - 1;
    this.heads = new Int32Array(slots).fill(-1);
    this.next = new Int32Array(Math.max(16, capacity));
    this.items = new Int32Array(Math.max(16, capacity));
    this.size = 2 * size;
  }

  /** Adds an item at a point. */
  add(x: number, y: number, item: number): void {
    if (this.count === this.items.length) {
      this.next = grown(this.next);
      this.items = grown(this.items);
    }
    const slot = this.slot(Math.floor(x / this.size), Math.floor(y / this.size));
    this.items[this.count] = item;
    this.next[this.count] = this.heads[slot];
    this.heads[slot] = this.count++;
  }

  /** Calls `see` for every item within the given size, and for some further off, until it returns true. */
  near(x: number, y: number, see: (item: number) => boolean): void {
    // cells are twice the size, so the four nearest hold all within it
    const ix = Math.floor(x / this.size - 0.5);
    const iy = Math.floor(y / this.size - 0.5);
    const seen: number[] = [];
    for (let k = 0; k < 4; k++) {
      const slot = this.slot(ix + (k & 1), iy + (k >> 1));
      if (seen.includes(slot)) {
        continue;
      }
      seen.push(slot);
      for (let e = this.heads[slot]; e >= 0; e = this.next[e]) {
        if (see(this.items[e])) {
          return;
        }
      }
    }
  }

  private slot(ix: number, iy: number): number {
    // cell numbers beyond 2^32 wrap, which costs only a look at items elsewhere
    const a = Math.imul(ix | 0, 0x9e3779b1) ^ Math.imul(Math.floor(ix / 0x1_0000_0000) | 0, 0x27d4eb2f);
    const b = Math.imul(iy | 0, 0x85ebca6b) ^ Math.imul(Math.floor(iy / 0x1_0000_0000) | 0, 0x165667b1);
    const h = Math.imul(a ^ (b >>> 15) ^ (b << 7), 0x2c1b3c6d);
    return (h ^ (h >>> 13)) & this.mask;
  }
}

function grown(list: Int32Array): Int32Array<ArrayBuffer> {
  const bigger = new Int32Array(2 * list.length);
  bigger.set(list);
  return bigger;
}
