import { isBefore } from './segment-set.ts';
import type { VertexIndex } from './vertex-index.ts';

/**
 * Vertices by sweep order, smallest first: a binary heap. It compares two coordinates that stay where they
 * are, while the queue of the medial axis holds one key a cell as it was when queued: a heap for both takes
 * 1.4 times as long there (docs/decisions/0010).
 */
export class VertexHeap {
  readonly #vertices: VertexIndex;
  readonly #heap: number[] = [];

  constructor(vertices: VertexIndex) {
    this.#vertices = vertices;
  }

  /** The first vertex, −1 when empty. */
  first(): number {
    return this.#heap.length > 0 ? this.#heap[0] : -1;
  }

  push(v: number): void {
    const heap = this.#heap;
    let at = heap.length;
    heap.push(v);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!isBefore(this.#vertices, v, heap[up])) {
        break;
      }
      heap[at] = heap[up];
      at = up;
    }
    heap[at] = v;
  }

  /** Removes the first vertex. */
  pop(): void {
    const heap = this.#heap;
    const last = heap.pop() as number;
    const n = heap.length;
    if (n === 0) {
      return;
    }
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= n) {
        break;
      }
      if (down + 1 < n && isBefore(this.#vertices, heap[down + 1], heap[down])) {
        down++;
      }
      if (!isBefore(this.#vertices, heap[down], last)) {
        break;
      }
      heap[at] = heap[down];
      at = down;
    }
    heap[at] = last;
  }
}
