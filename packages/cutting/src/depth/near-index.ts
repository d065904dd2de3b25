/** Items in a leaf box and boxes in a box above: few enough to test one by one, many enough to keep the tree flat. */
const FAN_OUT = 8;
/** Cells along each side of the grid by which boxes are ordered. */
const GRID = 1 << 15;

/**
 * Boxes in a tree, ordered along a curve through the plane, to visit those near a point first come first served: a box is entered only while the
 * caller still finds it worth it.
 */
export class NearIndex {
  readonly #items: Uint32Array;
  /** `[minX,minY,maxX,maxY]` of each box, level by level from the items up. */
  readonly #boxes: Float64Array;
  /** Greatest value of the items below each box. */
  readonly #most: Float64Array;
  /** Index of the first box of each level, with the total at the end. */
  readonly #levels: readonly number[];

  /** @param boxes `[minX,minY,maxX,maxY]` of each item; values one number for each item, the greatest of which is known for each box */
  constructor(boxes: Float64Array, values: Float64Array) {
    const count = boxes.length / 4;
    const order = Uint32Array.from({ length: count }, (_, i) => i);
    const keys = curveKeys(boxes);
    order.sort((a, b) => keys[a] - keys[b]);
    const levels = [0];
    for (let size = count, total = 0; size > 0; size = size === 1 ? 0 : Math.ceil(size / FAN_OUT)) {
      total += size;
      levels.push(total);
    }
    const total = levels[levels.length - 1];
    this.#items = order;
    this.#levels = levels;
    this.#boxes = new Float64Array(4 * total);
    this.#most = new Float64Array(total);
    order.forEach((item, k) => {
      this.#boxes.set(boxes.subarray(4 * item, 4 * item + 4), 4 * k);
      this.#most[k] = values[item];
    });
    for (let level = 1; level + 1 < levels.length; level++) {
      this.#fill(level);
    }
  }

  #fill(level: number): void {
    const [below, from, to] = [this.#levels[level - 1], this.#levels[level], this.#levels[level + 1]];
    const boxes = this.#boxes;
    for (let k = from; k < to; k++) {
      const first = below + (k - from) * FAN_OUT;
      const end = Math.min(first + FAN_OUT, from);
      boxes.set([Infinity, Infinity, -Infinity, -Infinity], 4 * k);
      this.#most[k] = -Infinity;
      for (let c = first; c < end; c++) {
        boxes[4 * k] = Math.min(boxes[4 * k], boxes[4 * c]);
        boxes[4 * k + 1] = Math.min(boxes[4 * k + 1], boxes[4 * c + 1]);
        boxes[4 * k + 2] = Math.max(boxes[4 * k + 2], boxes[4 * c + 2]);
        boxes[4 * k + 3] = Math.max(boxes[4 * k + 3], boxes[4 * c + 3]);
        this.#most[k] = Math.max(this.#most[k], this.#most[c]);
      }
    }
  }

  /** Visits items whose box `isWorth` it, told the distance to the box and the greatest value below it; nearer boxes first. */
  visit(
    x: number,
    y: number,
    isWorth: (distance: number, most: number) => boolean,
    visit: (item: number) => void,
  ): void {
    const top = this.#levels.length - 2;
    if (top >= 0) {
      this.#enter(top, this.#levels[top], x, y, isWorth, visit);
    }
  }

  #enter(
    level: number,
    box: number,
    x: number,
    y: number,
    isWorth: (distance: number, most: number) => boolean,
    visit: (item: number) => void,
  ): void {
    if (!isWorth(this.#distance(box, x, y), this.#most[box])) {
      return;
    }
    if (level === 0) {
      visit(this.#items[box]);
      return;
    }
    const first = this.#levels[level - 1] + (box - this.#levels[level]) * FAN_OUT;
    const end = Math.min(first + FAN_OUT, this.#levels[level]);
    const children: [number, number][] = [];
    for (let c = first; c < end; c++) {
      children.push([this.#distance(c, x, y), c]);
    }
    children.sort((a, b) => a[0] - b[0]);
    for (const [, child] of children) {
      this.#enter(level - 1, child, x, y, isWorth, visit);
    }
  }

  #distance(box: number, x: number, y: number): number {
    const boxes = this.#boxes;
    const dx = Math.max(0, boxes[4 * box] - x, x - boxes[4 * box + 2]);
    const dy = Math.max(0, boxes[4 * box + 1] - y, y - boxes[4 * box + 3]);
    return Math.hypot(dx, dy);
  }
}

/** Position of each box's middle along a curve that keeps near things near: the bits of both grid coordinates in turn. */
function curveKeys(boxes: Float64Array): Float64Array {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < boxes.length; i += 4) {
    minX = Math.min(minX, boxes[i]);
    minY = Math.min(minY, boxes[i + 1]);
    maxX = Math.max(maxX, boxes[i + 2]);
    maxY = Math.max(maxY, boxes[i + 3]);
  }
  const scale = (GRID - 1) / Math.max(maxX - minX, maxY - minY, Number.MIN_VALUE);
  const keys = new Float64Array(boxes.length / 4);
  for (let k = 0; k < keys.length; k++) {
    const gx = Math.floor(((boxes[4 * k] + boxes[4 * k + 2]) / 2 - minX) * scale);
    const gy = Math.floor(((boxes[4 * k + 1] + boxes[4 * k + 3]) / 2 - minY) * scale);
    keys[k] = spread(gx) + 2 * spread(gy);
  }
  return keys;
}

/** The bits of a 15-bit number with a 0 between each two. */
function spread(n: number): number {
  let v = n & 0x7fff;
  v = (v | (v << 8)) & 0x00ff00ff;
  v = (v | (v << 4)) & 0x0f0f0f0f;
  v = (v | (v << 2)) & 0x33333333;
  return (v | (v << 1)) & 0x55555555;
}
