import type { Boundary } from './boundary.ts';

/**
 * Boxes around runs of consecutive edges, as a binary tree without pointers: level 0 has one box per edge, box i of level k+1 holds
 * boxes 2i and 2i+1 of level k. Consecutive edges lie close together, so nothing has to be sorted.
 */
export interface BoxTree {
  /** `[minX,minY,maxX,maxY]` per box, all levels in one array. */
  readonly boxes: Float64Array;
  /** Index of the first box of each level. */
  readonly levelStart: readonly number[];
  /** Boxes in each level. */
  readonly levelSize: readonly number[];
}

/** The tree of boxes over all edges of `boundary`; O(n). */
export function boxTree(boundary: Boundary): BoxTree {
  const { count, x, y, next } = boundary;
  const levelStart: number[] = [];
  const levelSize: number[] = [];
  let total = 0;
  for (let size = count; size > 0; size = size === 1 ? 0 : (size + 1) >> 1) {
    levelStart.push(total);
    levelSize.push(size);
    total += size;
  }
  const boxes = new Float64Array(4 * total);
  for (let i = 0; i < count; i++) {
    const j = next[i];
    boxes[4 * i] = Math.min(x[i], x[j]);
    boxes[4 * i + 1] = Math.min(y[i], y[j]);
    boxes[4 * i + 2] = Math.max(x[i], x[j]);
    boxes[4 * i + 3] = Math.max(y[i], y[j]);
  }
  for (let level = 1; level < levelStart.length; level++) {
    for (let i = 0; i < levelSize[level]; i++) {
      const to = 4 * (levelStart[level] + i);
      const a = 4 * (levelStart[level - 1] + 2 * i);
      const b = 2 * i + 1 < levelSize[level - 1] ? a + 4 : a;
      boxes[to] = Math.min(boxes[a], boxes[b]);
      boxes[to + 1] = Math.min(boxes[a + 1], boxes[b + 1]);
      boxes[to + 2] = Math.max(boxes[a + 2], boxes[b + 2]);
      boxes[to + 3] = Math.max(boxes[a + 3], boxes[b + 3]);
    }
  }
  return { boxes, levelStart, levelSize };
}
