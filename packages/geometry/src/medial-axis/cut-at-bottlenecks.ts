import { pollStep } from '@pourproof/plane';
import type { Boundary } from './boundary.ts';
import type { Bottlenecks } from './find-bottlenecks.ts';

/**
 * The boundary cut along the chords of its bottlenecks. Every site (edge i, or `count + v` for reflex vertex
 * v) appears as one or more instances; `next` leads around one piece of the inside.
 */
export interface CutBoundary {
  readonly count: number;
  readonly site: Int32Array;
  readonly next: Int32Array;
  /** Bottleneck whose chord leads from an instance to the next, or -1 where both meet on the boundary. */
  readonly bottleneckAfter: Int32Array;
}

/** Cuts the boundary along all bottleneck chords; O(n + k log k). */
// biome-ignore lint/complexity/noExcessiveLinesPerFunction: phases that share a dozen arrays
export function cutAtBottlenecks(boundary: Boundary, bottlenecks: Bottlenecks): CutBoundary {
  const { count, isReflex, next, x, y, tx, ty } = boundary;
  // ports are the ends of bottlenecks, grouped by site and sorted along the boundary
  const portCount = 2 * bottlenecks.count;
  const portSite = new Int32Array(portCount);
  const portAt = new Float64Array(portCount);
  for (let k = 0; k < bottlenecks.count; k++) {
    pollStep();
    const v = bottlenecks.vertex[k];
    const site = bottlenecks.site[k];
    portSite[2 * k] = count + v;
    portAt[2 * k] = fanPosition(boundary, v, bottlenecks.endX[k] - x[v], bottlenecks.endY[k] - y[v]);
    portSite[2 * k + 1] = site;
    portAt[2 * k + 1] =
      site < count
        ? (bottlenecks.endX[k] - x[site]) * tx[site] + (bottlenecks.endY[k] - y[site]) * ty[site]
        : fanPosition(boundary, site - count, x[v] - bottlenecks.endX[k], y[v] - bottlenecks.endY[k]);
  }
  const firstPort = new Int32Array(2 * count + 1);
  for (let k = 0; k < portCount; k++) {
    firstPort[portSite[k] + 1]++;
  }
  for (let s = 0; s < 2 * count; s++) {
    pollStep();
    firstPort[s + 1] += firstPort[s];
  }
  const order = new Int32Array(portCount);
  const filled = firstPort.slice();
  for (let k = 0; k < portCount; k++) {
    order[filled[portSite[k]]++] = k;
  }
  for (let s = 0; s < 2 * count; s++) {
    pollStep();
    if (firstPort[s + 1] - firstPort[s] > 1) {
      order.subarray(firstPort[s], firstPort[s + 1]).sort((a, b) => portAt[a] - portAt[b]);
    }
  }
  let reflexCount = 0;
  for (let i = 0; i < count; i++) {
    pollStep();
    reflexCount += isReflex[i];
  }
  const total = count + reflexCount + portCount;
  const site = new Int32Array(total);
  const follow = new Int32Array(total);
  const bottleneckAfter = new Int32Array(total).fill(-1);
  // instance before and after each port, in boundary order
  const beforePort = new Int32Array(portCount);
  const afterPort = new Int32Array(portCount);
  const firstInstance = new Int32Array(count);
  const lastInstance = new Int32Array(count);
  let made = 0;
  const lay = (s: number): void => {
    site[made] = s;
    for (let k = firstPort[s]; k < firstPort[s + 1]; k++) {
      beforePort[order[k]] = made;
      made++;
      site[made] = s;
      afterPort[order[k]] = made;
    }
    made++;
  };
  for (let i = 0; i < count; i++) {
    pollStep();
    // point i and the edge that leaves it
    firstInstance[i] = made;
    if (isReflex[i] !== 0) {
      lay(count + i);
      follow[made - 1] = made;
    }
    lay(i);
    lastInstance[i] = made - 1;
  }
  for (let i = 0; i < count; i++) {
    pollStep();
    follow[lastInstance[i]] = firstInstance[next[i]];
  }
  for (let k = 0; k < bottlenecks.count; k++) {
    pollStep();
    follow[beforePort[2 * k]] = afterPort[2 * k + 1];
    follow[beforePort[2 * k + 1]] = afterPort[2 * k];
    bottleneckAfter[beforePort[2 * k]] = k;
    bottleneckAfter[beforePort[2 * k + 1]] = k;
  }
  return { count: total, site, next: follow, bottleneckAfter };
}

/** Angle of a direction within the normal cone of vertex v, rising along the boundary, 0 in the middle. */
function fanPosition(boundary: Boundary, v: number, dx: number, dy: number): number {
  const { tx, ty, previous } = boundary;
  const h = previous[v];
  const mx = -ty[h] - ty[v];
  const my = tx[h] + tx[v];
  return Math.atan2(mx * -dy + my * dx, mx * dx + my * dy);
}
