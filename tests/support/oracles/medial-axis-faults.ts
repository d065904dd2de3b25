import { erodedArea, type MedialAxis } from '@pourproof/geometry';
import { signedArea } from '@pourproof/plane';

/** How far an axis is from what defines one; all but the counts relative. */
export interface AxisFaults {
  /** Largest difference between a node's clearance and its distance to the nearest boundary point, by brute force, over the region's size. */
  readonly emptiness: number;
  /** Largest difference between a node's clearance and its distance to a site of an axis edge that ends there. */
  readonly touching: number;
  /** Sum of all cells over the region's area, less 1. */
  readonly tiling: number;
  /** Nodes less edges; equals outer rings less holes when the axis has exactly the region's holes as loops. */
  readonly euler: number;
  /** Half-edges that are not the successor of exactly one half-edge. */
  readonly unlinked: number;
  /** Largest fall of clearance along an edge, over the region's size. */
  readonly fall: number;
}

/** Checks the axis against the definition, knowing nothing of how it was made; at most `nodeLimit` nodes by brute force. */
export function axisFaults(axis: MedialAxis, nodeLimit = 2000): AxisFaults {
  const area = signedArea(axis.region);
  const size = Math.sqrt(area);
  const { nodeX, nodeY, nodeR, edgeFrom, edgeTo, nextHalf } = axis;
  let emptiness = 0;
  const stride = Math.max(1, Math.ceil(nodeR.length / nodeLimit));
  for (let k = 0; k < nodeR.length; k += stride) {
    emptiness = Math.max(emptiness, Math.abs(distanceToBoundary(axis, nodeX[k], nodeY[k]) - nodeR[k]));
  }
  let touching = 0;
  let fall = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    fall = Math.max(fall, nodeR[edgeFrom[e]] - nodeR[edgeTo[e]]);
    for (const node of [edgeFrom[e], edgeTo[e]]) {
      for (const site of [axis.edgeLeft[e], axis.edgeRight[e]]) {
        const d = distanceToSite(axis, site, nodeX[node], nodeY[node]);
        touching = Math.max(touching, Math.abs(d - nodeR[node]));
      }
    }
  }
  const times = new Uint8Array(nextHalf.length);
  for (const h of nextHalf) {
    times[h]++;
  }
  return {
    emptiness: emptiness / size,
    touching: touching / size,
    tiling: erodedArea(axis, 0) / area - 1,
    euler: nodeR.length - edgeFrom.length,
    unlinked: times.filter((t) => t !== 1).length,
    fall: fall / size,
  };
}

function distanceToBoundary(axis: MedialAxis, px: number, py: number): number {
  let least = Infinity;
  for (let e = 0; e < axis.boundary.count; e++) {
    least = Math.min(least, distanceToSite(axis, e, px, py));
  }
  return least;
}

/** Distance to the closed edge, or to the point, that is the site. */
function distanceToSite(axis: MedialAxis, site: number, px: number, py: number): number {
  const { count, x, y, next } = axis.boundary;
  if (site >= count) {
    return Math.hypot(px - x[site - count], py - y[site - count]);
  }
  const j = next[site];
  const dx = x[j] - x[site];
  const dy = y[j] - y[site];
  const t = ((px - x[site]) * dx + (py - y[site]) * dy) / (dx * dx + dy * dy);
  const s = Math.min(1, Math.max(0, t));
  return Math.hypot(px - x[site] - s * dx, py - y[site] - s * dy);
}
