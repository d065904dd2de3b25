import { type Bounds, EMPTY_BOUNDS, isEmptyBounds, joinBounds } from '@pourproof/plane';

/** Boxes sorted into the cells of a grid, to be asked which of them a box overlaps. */
export interface BoxIndex {
  /** Numbers of the boxes that overlap `box` by more than an edge, each once, in rising order. */
  overlapping(box: Bounds): number[];
  /** Whether a box before number `end` that overlaps `box` passes a test; stops at the first that does. */
  someBefore(end: number, box: Bounds, test: (i: number) => boolean): boolean;
}

/** Boxes that would lie in more cells than this are kept apart and always compared. */
const MAX_CELLS = 64;

/** Sorts boxes into about as many cells as there are boxes; O(n) unless most of them are larger than many others. */
export function indexBoxes(boxes: readonly Bounds[]): BoxIndex {
  const all = boxes.filter((b) => !isEmptyBounds(b)).reduce(joinBounds, EMPTY_BOUNDS);
  const side = Math.max(1, Math.ceil(Math.sqrt(boxes.length)));
  const stepX = (all[2] - all[0]) / side || 1;
  const stepY = (all[3] - all[1]) / side || 1;
  const cellsOf = (b: Bounds): [number, number, number, number] => [
    Math.max(0, Math.floor((b[0] - all[0]) / stepX)),
    Math.max(0, Math.floor((b[1] - all[1]) / stepY)),
    Math.min(side, Math.floor((b[2] - all[0]) / stepX)),
    Math.min(side, Math.floor((b[3] - all[1]) / stepY)),
  ];
  const cells = new Map<number, number[]>();
  const large: number[] = [];
  boxes.forEach((b, i) => {
    const [x0, y0, x1, y1] = cellsOf(b);
    if ((x1 - x0 + 1) * (y1 - y0 + 1) > MAX_CELLS) {
      large.push(i);
      return;
    }
    for (let y = y0; y <= y1; y++) {
      for (let x = x0; x <= x1; x++) {
        const key = y * (side + 1) + x;
        const cell = cells.get(key);
        if (cell === undefined) {
          cells.set(key, [i]);
        } else {
          cell.push(i);
        }
      }
    }
  });
  const overlapping = (box: Bounds): number[] => {
    const found = new Set<number>(large);
    const [x0, y0, x1, y1] = cellsOf(box);
    for (let y = y0; y <= y1; y++) {
      for (let x = x0; x <= x1; x++) {
        for (const i of cells.get(y * (side + 1) + x) ?? []) {
          found.add(i);
        }
      }
    }
    return [...found].filter((i) => overlap(boxes[i] as Bounds, box)).sort((a, b) => a - b);
  };
  const someBefore = (end: number, box: Bounds, test: (i: number) => boolean): boolean => {
    const passes = (list: readonly number[]): boolean => {
      for (const i of list) {
        if (i >= end) {
          return false;
        }
        if (overlap(boxes[i] as Bounds, box) && test(i)) {
          return true;
        }
      }
      return false;
    };
    if (passes(large)) {
      return true;
    }
    const [x0, y0, x1, y1] = cellsOf(box);
    for (let y = y0; y <= y1; y++) {
      for (let x = x0; x <= x1; x++) {
        if (passes(cells.get(y * (side + 1) + x) ?? [])) {
          return true;
        }
      }
    }
    return false;
  };
  return { overlapping, someBefore };
}

function overlap(a: Bounds, b: Bounds): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}
