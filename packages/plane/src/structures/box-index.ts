/**
 * Items below a leaf and boxes below a box: few enough to test one by one, many enough to keep the tree flat.
 */
const FAN_OUT = 8;
/** Cells along each side of the grid by which boxes are ordered. */
const GRID = 1 << 15;
/** Items that there may be at most, so that one number holds a place on the curve, 30 bits, and an item. */
const MAX_ITEMS = 2 ** 23;
/** Boxes that wait on the way down at most: FAN_OUT − 1 for each of 9 levels, and one more. */
const MAX_WAITING = 64;

/**
 * Boxes in a packed R-tree (Guttman 1984), ordered along Hilbert’s curve (Kamel and Faloutsos 1993): made
 * once, then asked which items' boxes meet a box, or which lie near a point, nearest first. Each item carries
 * a value, and each box of the tree knows the greatest below it.
 *
 * @example
 * const index = new BoxIndex(Float64Array.of(0, 0, 1, 1, 5, 5, 6, 6));
 * index.someIn(0.5, 0.5, 2, 2, (item) => item === 0); // true
 * index.someIn(2, 2, 3, 3, () => true); // false
 */
export class BoxIndex {
  readonly #items: Uint32Array;
  /** `[minX,minY,maxX,maxY]` of each box, level by level from the items up. */
  readonly #boxes: Float64Array;
  /** Greatest value of the items below each box. */
  readonly #greatest: Float64Array;
  /** Index of the first box of each level, with the total at the end. */
  readonly #levels: readonly number[];
  readonly #waiting: Uint32Array = new Uint32Array(2 * MAX_WAITING);

  /**
   * @param boxes `[minX,minY,maxX,maxY]` of each item; one inside out meets nothing
   * @param values one number for each item; default: 0 for all
   * @throws {RangeError} from 2²³ boxes on
   */
  constructor(boxes: Float64Array, values: Float64Array = new Float64Array(boxes.length / 4)) {
    const count = boxes.length / 4;
    if (count >= MAX_ITEMS) {
      throw new RangeError(`there are ${count} boxes; give fewer than ${MAX_ITEMS}`);
    }
    const order = curveOrder(boxes);
    const levels = [0];
    for (let size = count, total = 0; size > 0; size = size === 1 ? 0 : Math.ceil(size / FAN_OUT)) {
      total += size;
      levels.push(total);
    }
    const total = levels[levels.length - 1];
    this.#items = order;
    this.#levels = levels;
    this.#boxes = new Float64Array(4 * total);
    this.#greatest = new Float64Array(total);
    for (let k = 0; k < count; k++) {
      for (let side = 0; side < 4; side++) {
        this.#boxes[4 * k + side] = boxes[4 * order[k] + side];
      }
      this.#greatest[k] = values[order[k]];
    }
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
      let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
      let greatest = -Infinity;
      for (let c = first; c < end; c++) {
        minX = Math.min(minX, boxes[4 * c]);
        minY = Math.min(minY, boxes[4 * c + 1]);
        maxX = Math.max(maxX, boxes[4 * c + 2]);
        maxY = Math.max(maxY, boxes[4 * c + 3]);
        greatest = Math.max(greatest, this.#greatest[c]);
      }
      boxes[4 * k] = minX;
      boxes[4 * k + 1] = minY;
      boxes[4 * k + 2] = maxX;
      boxes[4 * k + 3] = maxY;
      this.#greatest[k] = greatest;
    }
  }

  /**
   * Whether `isEnough` holds for one of the items whose boxes meet a box, edges included. It is asked about
   * each once, in no order that means anything, until it holds; it must not ask this index.
   */
  someIn(
    minX: number,
    minY: number,
    maxX: number,
    maxY: number,
    isEnough: (item: number) => boolean,
  ): boolean {
    const boxes = this.#boxes;
    const levels = this.#levels;
    const waiting = this.#waiting;
    let level = levels.length - 2;
    let first = level < 0 ? 0 : levels[level];
    let size = 0;
    for (;;) {
      const end = level < 0 ? first : Math.min(first + FAN_OUT, levels[level + 1]);
      for (let box = first; box < end; box++) {
        const at = 4 * box;
        if (boxes[at] > maxX || boxes[at + 1] > maxY || boxes[at + 2] < minX || boxes[at + 3] < minY) {
          continue;
        }
        if (level > 0) {
          waiting[size++] = levels[level - 1] + (box - levels[level]) * FAN_OUT;
          waiting[size++] = level - 1;
        } else if (isEnough(this.#items[box])) {
          return true;
        }
      }
      if (size === 0) {
        return false;
      }
      level = waiting[--size];
      first = waiting[--size];
    }
  }

  /**
   * Visits items near a point while `isWorth` their box, told the distance to the box and the greatest value
   * below it; nearer boxes first.
   */
  visitNear(
    x: number,
    y: number,
    isWorth: (distance: number, greatest: number) => boolean,
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
    isWorth: (distance: number, greatest: number) => boolean,
    visit: (item: number) => void,
  ): void {
    if (!isWorth(this.#distance(box, x, y), this.#greatest[box])) {
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

/**
 * The items by the places of their boxes' middles along the curve: the bits of both grid coordinates in turn,
 * so that near things stay near.
 */
function curveOrder(boxes: Float64Array): Uint32Array {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < boxes.length; i += 4) {
    minX = Math.min(minX, boxes[i]);
    minY = Math.min(minY, boxes[i + 1]);
    maxX = Math.max(maxX, boxes[i + 2]);
    maxY = Math.max(maxY, boxes[i + 3]);
  }
  const scale = (GRID - 1) / Math.max(maxX - minX, maxY - minY, Number.MIN_VALUE);
  const count = boxes.length / 4;
  // place and item in one number, so that they sort without a comparing function
  const keys = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const gx = Math.floor(((boxes[4 * k] + boxes[4 * k + 2]) / 2 - minX) * scale);
    const gy = Math.floor(((boxes[4 * k + 1] + boxes[4 * k + 3]) / 2 - minY) * scale);
    keys[k] = hilbert(gx, gy) * MAX_ITEMS + k;
  }
  keys.sort();
  return Uint32Array.from(keys, (key) => key % MAX_ITEMS);
}

/** How far along Hilbert's curve a cell of the grid lies. */
function hilbert(column: number, row: number): number {
  let x = column;
  let y = row;
  let way = 0;
  for (let side = GRID >> 1; side > 0; side >>= 1) {
    const isRight = (x & side) === 0 ? 0 : 1;
    const isLower = (y & side) === 0 ? 0 : 1;
    way += side * side * ((3 * isRight) ^ isLower);
    if (isLower === 0) {
      // the curve runs along this quarter turned, so that quarters join end to end
      if (isRight === 1) {
        x = ~x;
        y = ~y;
      }
      const swapped = x;
      x = y;
      y = swapped;
    }
  }
  return way;
}
