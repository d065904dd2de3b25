/**
 * The vertices of an arrangement, no two of them nearer to each other than a tolerance. A hash of square
 * cells as wide as the tolerance: what is near a point lies in one of nine cells.
 */
export class VertexIndex {
  readonly x: number[] = [];
  readonly y: number[] = [];
  /** Largest distance that a point was moved onto an earlier one, mm. */
  largestMoveMm = 0;
  readonly #toleranceMm: number;
  readonly #originX: number;
  readonly #originY: number;
  readonly #nextInCell: number[] = [];
  #table: Int32Array;

  /**
   * @param toleranceMm points nearer than this become one; at least 2⁻³⁰ of the extent, so that cell numbers
   *   fit 32 bits
   * @param originX,originY a corner of the extent, in mm
   */
  constructor(toleranceMm: number, originX: number, originY: number, expected: number) {
    this.#toleranceMm = toleranceMm;
    this.#originX = originX;
    this.#originY = originY;
    this.#table = new Int32Array(tableSize(expected)).fill(-1);
  }

  /** Number of the vertex at this point: an earlier one within the tolerance, or a new one. */
  findOrAdd(x: number, y: number): number {
    const found = this.#find(x, y);
    if (found >= 0) {
      if (this.x[found] !== x || this.y[found] !== y) {
        this.largestMoveMm = Math.max(this.largestMoveMm, Math.hypot(this.x[found] - x, this.y[found] - y));
      }
      return found;
    }
    const id = this.x.length;
    this.x.push(x);
    this.y.push(y);
    if (id * 2 > this.#table.length) {
      this.#grow();
    } else {
      this.#link(id);
    }
    return id;
  }

  #find(x: number, y: number): number {
    const limit = this.#toleranceMm * this.#toleranceMm;
    const cx = this.#cell(x - this.#originX);
    const cy = this.#cell(y - this.#originY);
    let best = -1;
    let bestDistance = limit;
    for (let ix = cx - 1; ix <= cx + 1; ix++) {
      for (let iy = cy - 1; iy <= cy + 1; iy++) {
        for (let id = this.#table[this.#slot(ix, iy)]; id >= 0; id = this.#nextInCell[id]) {
          const dx = this.x[id] - x;
          const dy = this.y[id] - y;
          const distance = dx * dx + dy * dy;
          if (distance < bestDistance) {
            best = id;
            bestDistance = distance;
          }
        }
      }
    }
    return best;
  }

  #cell(offset: number): number {
    return Math.floor(offset / this.#toleranceMm) | 0;
  }

  #slot(ix: number, iy: number): number {
    let h = Math.imul(ix, 0x9e3779b1) ^ Math.imul(iy, 0x85ebca77);
    h ^= h >>> 15;
    return Math.imul(h, 0xc2b2ae3d) & (this.#table.length - 1);
  }

  #link(id: number): void {
    const slot = this.#slot(this.#cell(this.x[id] - this.#originX), this.#cell(this.y[id] - this.#originY));
    this.#nextInCell[id] = this.#table[slot];
    this.#table[slot] = id;
  }

  #grow(): void {
    this.#table = new Int32Array(this.#table.length * 4).fill(-1);
    for (let id = 0; id < this.x.length; id++) {
      this.#link(id);
    }
  }
}

function tableSize(expected: number): number {
  let size = 64;
  while (size < 2 * expected) {
    size *= 2;
  }
  return size;
}
