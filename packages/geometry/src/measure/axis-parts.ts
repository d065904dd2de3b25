import { pollStep, UnionFind } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';

const known = new WeakMap<MedialAxis, Int32Array>();

/** Which separate part of the artwork each node of an axis lies in: from 0, in the order of the nodes. Found once for every axis. */
export function axisParts(axis: MedialAxis): Int32Array {
  const parts = known.get(axis) ?? partedNodes(axis);
  known.set(axis, parts);
  return parts;
}

function partedNodes({ edgeFrom, edgeTo, nodeR }: MedialAxis): Int32Array {
  const together = new UnionFind(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    together.join(edgeFrom[e], edgeTo[e]);
  }
  const parts = new Int32Array(nodeR.length);
  let count = 0;
  for (let k = 0; k < parts.length; k++) {
    pollStep();
    // a set is named by its least node, which comes first
    const name = together.find(k);
    parts[k] = name === k ? count++ : parts[name];
  }
  return parts;
}
