import { type Bounds, boundsOf, type Rings } from '@pourproof/plane';

/** Boxes one after the other as `[minX, minY, maxX, maxY, …]`; those without extent are inside out. */
export type Boxes = Float64Array;

/** Boxes sorted into the cells of a grid, to be asked which of them one overlaps. */
export interface BoxIndex {
  /** Numbers of the boxes that overlap box `i` by more than an edge, each once and without `i`, in rising order. */
  overlapping(i: number): number[];
  /** Whether a box before box `i` that overlaps it passes a test; stops at the first that does. */
  someBefore(i: number, test: (k: number) => boolean): boolean;
  /** The same for boxes after box `i`; a box may be tested more than once. */
  someAfter(i: number, test: (k: number) => boolean): boolean;
}

/** Boxes that would lie in more cells than this are kept apart and always compared. */
const MAX_CELLS = 64;

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

/** Sorts boxes into about as many cells as there are boxes; O(n) unless most of them are larger than many others. */
export function indexBoxes(boxes: Boxes): BoxIndex {
  const grid = new CellGrid(boxes);
  const seen = new Int32Array(boxes.length / 4).fill(-1);
  const overlapping = (i: number): number[] => {
    const found: number[] = [];
    grid.visit(i, (k) => {
      if (seen[k] !== i && k !== i && overlap(boxes, k, i)) {
        seen[k] = i;
        found.push(k);
      }
      return false;
    });
    for (const k of found) {
      seen[k] = -1;
    }
    return found.sort((a, b) => a - b);
  };
  const someBefore = (i: number, test: (k: number) => boolean): boolean =>
    grid.visit(i, (k) => k < i && overlap(boxes, k, i) && test(k));
  const someAfter = (i: number, test: (k: number) => boolean): boolean =>
    grid.visit(i, (k) => k > i && overlap(boxes, k, i) && test(k));
  return { overlapping, someBefore, someAfter };
}

/** Numbers of boxes by cell in one flat list, and those that are too large for cells. */
class CellGrid {
  readonly #boxes: Boxes;
  readonly #side: number;
  readonly #minX: number;
  readonly #minY: number;
  readonly #stepX: number;
  readonly #stepY: number;
  readonly #cellEnds: Uint32Array;
  readonly #inCells: Uint32Array;
  readonly #large: number[] = [];

  constructor(boxes: Boxes) {
    const count = boxes.length / 4;
    const [minX, minY, maxX, maxY] = boxAround(boxes);
    this.#boxes = boxes;
    this.#side = Math.max(1, Math.ceil(Math.sqrt(count)));
    this.#minX = minX;
    this.#minY = minY;
    this.#stepX = (maxX - minX) / this.#side || 1;
    this.#stepY = (maxY - minY) / this.#side || 1;
    // counted first, so that the lists of all cells lie in one array without gaps
    const ends = new Uint32Array(this.#side * this.#side);
    for (let i = 0; i < count; i++) {
      if (this.#isLarge(i)) {
        this.#large.push(i);
      } else {
        this.#eachCell(i, (cell) => {
          ends[cell] = (ends[cell] as number) + 1;
          return false;
        });
      }
    }
    let sum = 0;
    for (let cell = 0; cell < ends.length; cell++) {
      sum += ends[cell] as number;
      ends[cell] = sum;
    }
    this.#inCells = new Uint32Array(sum);
    // from the last box to the first, so that each cell's list ends up rising and `ends` at its start
    for (let i = count - 1; i >= 0; i--) {
      if (!this.#isLarge(i)) {
        this.#eachCell(i, (cell) => {
          ends[cell] = (ends[cell] as number) - 1;
          this.#inCells[ends[cell] as number] = i;
          return false;
        });
      }
    }
    this.#cellEnds = ends;
  }

  /** Visits the boxes that may overlap box i, some of them several times, until a visit answers true; tells whether one did. */
  visit(i: number, isEnough: (k: number) => boolean): boolean {
    return (
      this.#large.some(isEnough) ||
      this.#eachCell(i, (cell) => {
        const to = this.#cellEnds[cell + 1] ?? this.#inCells.length;
        for (let at = this.#cellEnds[cell] as number; at < to; at++) {
          if (isEnough(this.#inCells[at] as number)) {
            return true;
          }
        }
        return false;
      })
    );
  }

  #isLarge(i: number): boolean {
    const [x0, y0, x1, y1] = this.#cellsOf(i);
    return (x1 - x0 + 1) * (y1 - y0 + 1) > MAX_CELLS;
  }

  #cellsOf(i: number): readonly [number, number, number, number] {
    const b = this.#boxes;
    const column = (x: number): number =>
      Math.min(this.#side - 1, Math.max(0, Math.floor((x - this.#minX) / this.#stepX)));
    const row = (y: number): number =>
      Math.min(this.#side - 1, Math.max(0, Math.floor((y - this.#minY) / this.#stepY)));
    return [
      column(b[4 * i] as number),
      row(b[4 * i + 1] as number),
      column(b[4 * i + 2] as number),
      row(b[4 * i + 3] as number),
    ];
  }

  #eachCell(i: number, isEnough: (cell: number) => boolean): boolean {
    const [x0, y0, x1, y1] = this.#cellsOf(i);
    for (let y = y0; y <= y1; y++) {
      for (let x = x0; x <= x1; x++) {
        if (isEnough(y * this.#side + x)) {
          return true;
        }
      }
    }
    return false;
  }
}

function overlap(boxes: Boxes, i: number, k: number): boolean {
  const [a, b] = [4 * i, 4 * k];
  const at = (index: number): number => boxes[index] as number;
  return at(a) < at(b + 2) && at(b) < at(a + 2) && at(a + 1) < at(b + 3) && at(b + 1) < at(a + 3);
}
