import { type Bounds, BoxIndex, ringsBounds } from '@pourproof/plane';
import type { PlacedBlock } from './place-board.ts';

/** Finds the blocks near a point without testing every block. */
export interface BlockIndex {
  /**
   * Indices, in rising order, of the blocks whose boxes meet a box; blocks without an outline are always
   * included.
   */
  readonly near: (box: Bounds) => readonly number[];
}

/** Boxes count as meeting within this, mm: far above rounding, far below the accuracy of a saw. */
const BOX_TOL_MM = 1e-5;

/** An index of the blocks of a board by their boxes. */
export function blockIndex(blocks: readonly Pick<PlacedBlock, 'region'>[]): BlockIndex {
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
