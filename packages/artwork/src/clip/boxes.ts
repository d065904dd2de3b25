import { type Bounds, BoxIndex, boundsOf, type Rings } from '@pourproof/plane';

/** Boxes one after the other as `[minX, minY, maxX, maxY, …]`; those without extent are inside out. */
export type Boxes = Float64Array;

/** The boxes of regions in their order. */
export function boxesOf(regions: Iterable<Rings>, count: number): Boxes {
  const boxes = new Float64Array(4 * count);
  let at = 0;
  for (const { coords } of regions) {
    boxes.set(boundsOf(coords), at);
    at += 4;
  }
  return boxes;
}

/** Box `i` of a list. */
export function boxAt(boxes: Boxes, i: number): Bounds {
  return [boxes[4 * i], boxes[4 * i + 1], boxes[4 * i + 2], boxes[4 * i + 3]];
}

/** The box around all boxes of a list. */
export function boxAround(boxes: Boxes): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < boxes.length; i += 4) {
    minX = Math.min(minX, boxes[i]);
    minY = Math.min(minY, boxes[i + 1]);
    maxX = Math.max(maxX, boxes[i + 2]);
    maxY = Math.max(maxY, boxes[i + 3]);
  }
  return [minX, minY, maxX, maxY];
}

/** Boxes that can be asked which of them one overlaps. */
export class OverlapIndex {
  readonly #boxes: Boxes;
  readonly #index: BoxIndex;

  constructor(boxes: Boxes) {
    this.#boxes = boxes;
    this.#index = new BoxIndex(boxes);
  }

  /**
   * Whether one of the boxes that overlap box `i` by more than an edge, `i` itself left out, passes a test;
   * each is tested once, until one does. The test must not ask this index.
   */
  some(i: number, test: (k: number) => boolean): boolean {
    const [minX, minY, maxX, maxY] = boxAt(this.#boxes, i);
    return this.#index.someIn(minX, minY, maxX, maxY, (k) => k !== i && this.#overlap(i, k) && test(k));
  }

  #overlap(i: number, k: number): boolean {
    const b = this.#boxes;
    const [p, q] = [4 * i, 4 * k];
    return b[p] < b[q + 2] && b[q] < b[p + 2] && b[p + 1] < b[q + 3] && b[q + 1] < b[p + 3];
  }
}
