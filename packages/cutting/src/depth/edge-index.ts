import type { Boundary } from '@pourproof/geometry';
import { BoxIndex, pollStep } from '@pourproof/plane';

/** An index of the edges of a boundary by their boxes. */
export function edgeIndex({ count, x, y, next }: Boundary): BoxIndex {
  const boxes = new Float64Array(4 * count);
  for (let i = 0; i < count; i++) {
    pollStep();
    const j = next[i];
    boxes[4 * i] = Math.min(x[i], x[j]);
    boxes[4 * i + 1] = Math.min(y[i], y[j]);
    boxes[4 * i + 2] = Math.max(x[i], x[j]);
    boxes[4 * i + 3] = Math.max(y[i], y[j]);
  }
  return new BoxIndex(boxes);
}
