import type { CutBoundary } from './cut-at-bottlenecks.ts';

/**
 * The pieces of a boundary cut at its bottlenecks, except those of two instances, and the size of the axis of
 * all pieces.
 */
export interface Pieces {
  /** One instance of each piece. */
  readonly starts: readonly number[];
  /** Number of its instances, 3 or more. */
  readonly sizes: readonly number[];
  readonly nodeCount: number;
  readonly edgeCount: number;
}

/** The pieces of `cut`; linear time. */
export function piecesOf({ count, next, bottleneckAfter }: CutBoundary, bottleneckCount: number): Pieces {
  const starts: number[] = [];
  const sizes: number[] = [];
  const isSeen = new Uint8Array(count);
  let nodeCount = bottleneckCount;
  let edgeCount = 0;
  for (let start = 0; start < count; start++) {
    nodeCount += bottleneckAfter[start] < 0 ? 1 : 0;
    if (isSeen[start] === 0) {
      let size = 0;
      let i = start;
      do {
        isSeen[i] = 1;
        size++;
        i = next[i];
      } while (i !== start);
      // each cell that closes makes a node and, except the last, an edge besides those from the leaves
      nodeCount += size - 2;
      edgeCount += size === 2 ? 1 : 2 * size - 3;
      if (size > 2) {
        starts.push(start);
        sizes.push(size);
      }
    }
  }
  return { starts, sizes, nodeCount, edgeCount };
}
