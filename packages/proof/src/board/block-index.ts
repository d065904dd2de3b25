import { type Bounds, boundsOf, ringsBounds } from '@pourproof/plane';
import type { PlacedBlock } from './place-board.ts';

/** Finds the blocks near a place without asking every block. */
export interface BlockIndex {
  /** Indices of the blocks whose box meets a box, rising; all that have no outline are among them. */
  readonly near: (box: Bounds) => readonly number[];
}

/** Boxes are met within this, mm: far above rounding, far below what a saw holds. */
const SLACK_MM = 1e-5;
/** Cells along a side at most: beyond, an empty board would cost more than it saves. */
const MOST_CELLS = 64;

/** An even grid over the blocks of a board, with about one cell for each block. */
export function blockIndex(blocks: readonly PlacedBlock[]): BlockIndex {
  const boxes = blocks.map(({ region }) => (region === null ? null : ringsBounds(region)));
  const known = boxes.filter((box) => box !== null);
  const everywhere = boxes.flatMap((box, b) => (box === null ? [b] : []));
  if (known.length === 0) {
    return { near: () => everywhere };
  }
  const [left, top, right, bottom] = boundsOf(known.flat());
  const side = Math.min(MOST_CELLS, Math.max(1, Math.round(Math.sqrt(known.length))));
  const column = cellOf(left, right, side);
  const row = cellOf(top, bottom, side);
  const cells: number[][] = Array.from({ length: side * side }, () => []);
  const visit = ([x0, y0, x1, y1]: Bounds, take: (cell: number[]) => void): void => {
    for (let j = row(y0 - SLACK_MM); j <= row(y1 + SLACK_MM); j++) {
      for (let i = column(x0 - SLACK_MM); i <= column(x1 + SLACK_MM); i++) {
        take(cells[j * side + i] as number[]);
      }
    }
  };
  boxes.forEach((box, b) => {
    if (box !== null) {
      visit(box, (cell) => void cell.push(b));
    }
  });
  return {
    near: (box) => {
      const found = new Set(everywhere);
      visit(box, (cell) => {
        for (const b of cell) {
          if (meets(boxes[b] as Bounds, box)) {
            found.add(b);
          }
        }
      });
      return found.size < 2 ? [...found] : [...found].sort((a, b) => a - b);
    },
  };
}

/** The cell of a coordinate; places outside belong to the outermost cells. */
function cellOf(from: number, to: number, count: number): (value: number) => number {
  const width = Math.max(to - from, Number.MIN_VALUE) / count;
  return (value) => Math.min(count - 1, Math.max(0, Math.floor((value - from) / width)));
}

function meets([a0, b0, a1, b1]: Bounds, [x0, y0, x1, y1]: Bounds): boolean {
  return x1 >= a0 - SLACK_MM && x0 <= a1 + SLACK_MM && y1 >= b0 - SLACK_MM && y0 <= b1 + SLACK_MM;
}
