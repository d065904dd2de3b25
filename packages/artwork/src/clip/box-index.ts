import { type Bounds, BoxIndex, boundsOf, type Rings } from '@pourproof/plane';

/** Boxes one after the other as `[minX, minY, maxX, maxY, …]`; those without extent are inside out. */
export type Boxes = Float64Array;

/** Answers which boxes of a list one of them overlaps. */
export interface Overlaps {
  /** Numbers of the boxes that overlap box `i` by more than an edge, each once and without `i`, in rising order. */
  overlapping(i: number): number[];
  /** Whether a box before box `i` that overlaps it passes a test; stops at the first that does. */
  someBefore(i: number, test: (k: number) => boolean): boolean;
  /** The same for boxes after box `i`. */
  someAfter(i: number, test: (k: number) => boolean): boolean;
}

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
  return [boxes[4 * i], boxes[4 * i + 1], boxes[4 * i + 2], boxes[4 * i + 3]] as unknown as Bounds;
}

/** The box around all boxes of a list. */
export function boxAround(boxes: Boxes): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < boxes.length; i += 4) {
    minX = Math.min(minX, boxes[i] as number);
    minY = Math.min(minY, boxes[i + 1] as number);
    maxX = Math.max(maxX, boxes[i + 2] as number);
    maxY = Math.max(maxY, boxes[i + 3] as number);
  }
  return [minX, minY, maxX, maxY];
}

/** What of a list of boxes overlaps what; O(n log n). */
export function indexBoxes(boxes: Boxes): Overlaps {
  const index = new BoxIndex(boxes);
  const some = (i: number, isEnough: (k: number) => boolean): boolean => {
    const [minX, minY, maxX, maxY] = boxAt(boxes, i);
    return index.someIn(minX, minY, maxX, maxY, (k) => overlap(boxes, k, i) && isEnough(k));
  };
  const overlapping = (i: number): number[] => {
    const found: number[] = [];
    some(i, (k) => {
      if (k !== i) {
        found.push(k);
      }
      return false;
    });
    return found.sort((a, b) => a - b);
  };
  return {
    overlapping,
    someBefore: (i, test) => some(i, (k) => k < i && test(k)),
    someAfter: (i, test) => some(i, (k) => k > i && test(k)),
  };
}

function overlap(boxes: Boxes, i: number, k: number): boolean {
  const [a, b] = [4 * i, 4 * k];
  const at = (index: number): number => boxes[index] as number;
  return at(a) < at(b + 2) && at(b) < at(a + 2) && at(a + 1) < at(b + 3) && at(b + 1) < at(a + 3);
}
