import { type Bounds, BoxIndex, ringsBounds } from '@pourproof/plane';
import type { PlacedBlock } from './place-board.ts';

/** Finds the blocks near a place without asking every block. */
export interface BlockIndex {
  /** Indices of the blocks whose box meets a box, ascending; blocks without an outline always match. */
  readonly near: (box: Bounds) => readonly number[];
}

/** Boxes are enlarged by this, mm: far above rounding, far below the tolerance of a saw. */
const BOX_TOL_MM = 1e-5;

/** An index of the blocks of a board by their boxes. */
export function blockIndex(blocks: readonly PlacedBlock[]): BlockIndex {
  const everywhere: number[] = [];
  const bounded: number[] = [];
  const boxes: number[] = [];
  blocks.forEach(({ region }, b) => {
    if (region === null) {
      everywhere.push(b);
    } else {
      bounded.push(b);
      boxes.push(...ringsBounds(region));
    }
  });
  const index = new BoxIndex(Float64Array.from(boxes));
  return {
    near: ([minX, minY, maxX, maxY]) => {
      const found = [...everywhere];
      index.someIn(minX - BOX_TOL_MM, minY - BOX_TOL_MM, maxX + BOX_TOL_MM, maxY + BOX_TOL_MM, (item) => {
        found.push(bounded[item] as number);
        return false;
      });
      return found.length < 2 ? found : found.sort((a, b) => a - b);
    },
  };
}
