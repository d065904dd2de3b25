import { blockIndex } from './block-index.ts';
import { clipSegment } from './clip-segment.ts';
import type { PlacedBlock } from './place-board.ts';

/** Returns a function from a place to the index of the block under it: the first of several, -1 for none. */
export function blockAt(blocks: readonly PlacedBlock[]): (x: number, y: number) => number {
  const { near } = blockIndex(blocks);
  return (x, y) =>
    near([x, y, x, y]).find((b) => {
      const region = blocks[b]?.region ?? null;
      return region === null || clipSegment(region, [x, y, x, y], [0, 0]).length > 0;
    }) ?? -1;
}
