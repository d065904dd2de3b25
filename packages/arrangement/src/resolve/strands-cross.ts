import { turn } from './segment-set.ts';
import type { VertexIndex } from './vertex-index.ts';

/**
 * Whether two outlines that pass vertex v, each given by the vertices before and after it, change sides
 * there. Exact. Outlines that share an edge at v do not cross there.
 */
export function strandsCross(
  vertices: VertexIndex,
  v: number,
  a: { readonly from: number; readonly to: number },
  b: { readonly from: number; readonly to: number },
): boolean {
  return (
    (isInSector(vertices, v, a.from, a.to, b.from) && isInSector(vertices, v, a.to, a.from, b.to)) ||
    (isInSector(vertices, v, a.from, a.to, b.to) && isInSector(vertices, v, a.to, a.from, b.from))
  );
}

/** Whether r lies strictly inside the sector at v from p to q, turning from +x towards +y. */
function isInSector(vertices: VertexIndex, v: number, p: number, q: number, r: number): boolean {
  const opening = turn(vertices, v, p, q);
  if (opening > 0) {
    return turn(vertices, v, p, r) > 0 && turn(vertices, v, r, q) > 0;
  }
  if (opening < 0) {
    return !(turn(vertices, v, q, r) >= 0 && turn(vertices, v, r, p) >= 0);
  }
  const { x, y } = vertices;
  const isStraight = (x[p] - x[v]) * (x[q] - x[v]) + (y[p] - y[v]) * (y[q] - y[v]) < 0;
  return isStraight && turn(vertices, v, p, r) > 0;
}
