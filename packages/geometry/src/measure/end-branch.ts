import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { BeyondCorners } from './beyond-corners.ts';

/**
 * The axis of a stroke from its free end to where it meets others or is widest, across waves in its width.
 */
export interface EndBranch {
  readonly edges: readonly number[];
  /** The node before each edge, and the one after the last. */
  readonly nodes: readonly number[];
  /** Distance along the axis from the free end, and clearance, at each node, mm. */
  readonly ways: readonly number[];
  readonly radii: readonly number[];
}

/** A branch may narrow again by this share of its width and still counts as widening (our choice). */
const WAVE = 0.1;

/** The branch from a free end, a node where one stroke ends. */
export function endBranch(axis: MedialAxis, end: number, graph: BeyondCorners): EndBranch {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const { length, degree, otherEdge } = graph;
  let node = end;
  const edges: number[] = [];
  const nodes = [node];
  const ways = [0];
  const radii = [nodeR[node]];
  let widest = 0;
  for (let at = otherEdge[end]; ; at = otherEdge[node] ^ at) {
    node = edgeFrom[at] === node ? edgeTo[at] : edgeFrom[at];
    if (nodeR[node] < (1 - WAVE) * radii[widest]) {
      break;
    }
    edges.push(at);
    nodes.push(node);
    ways.push(ways[ways.length - 1] + length[at]);
    radii.push(nodeR[node]);
    if (nodeR[node] >= radii[widest]) {
      widest = radii.length - 1;
    }
    if (degree[node] !== 2) {
      break;
    }
  }
  edges.length = widest;
  nodes.length = widest + 1;
  ways.length = widest + 1;
  radii.length = widest + 1;
  return { edges, nodes, ways, radii };
}

/** Clearance at a distance from the free end, linear between nodes; that of the last node beyond it. */
export function radiusAt({ ways, radii }: Pick<EndBranch, 'ways' | 'radii'>, way: number): number {
  let low = 0;
  let high = ways.length - 1;
  if (way >= ways[high]) {
    return radii[high];
  }
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (ways[middle] <= way) {
      low = middle;
    } else {
      high = middle;
    }
  }
  const span = ways[high] - ways[low];
  return span > 0 ? radii[low] + ((radii[high] - radii[low]) * (way - ways[low])) / span : radii[low];
}
