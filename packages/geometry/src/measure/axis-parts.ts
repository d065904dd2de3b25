import { UnionFind } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';

/** Which separate part of the artwork each node of an axis lies in: from 0, in the order of the nodes. */
export function axisParts({ edgeFrom, edgeTo, nodeR }: MedialAxis): Int32Array {
  const together = new UnionFind(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    together.join(edgeFrom[e], edgeTo[e]);
  }
  const order = new Map<number, number>();
  return Int32Array.from(nodeR, (_, k) => {
    const name = together.find(k);
    const known = order.get(name) ?? order.size;
    order.set(name, known);
    return known;
  });
}
