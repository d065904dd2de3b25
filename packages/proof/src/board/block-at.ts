import { blockIndex } from './block-index.ts';
import { clipSegment } from './clip-segment.ts';
import type { PlacedBlock } from './place-board.ts';

/**
 * A function that returns the index of the block under a point, the first if there are several; -1 if there
 * is none.
 */
export function blockAt(blocks: readonly PlacedBlock[]): (x: number, y: number) => number {
  const { near } = blockIndex(blocks);
  return (x, y) =>
    near([x, y, x, y]).find((b) => {
      const region = blocks[b]?.region ?? null;
      return region === null || clipSegment(region, [x, y, x, y], [0, 0]).length > 0;
    }) ?? -1;
}
