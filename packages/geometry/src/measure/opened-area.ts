import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { stoppedDiscs } from '../outline/level-crossings.ts';
import { openArcs } from '../outline/open-arcs.ts';
import { BLOCK } from './axis-blocks.ts';
import { AxisEdge } from './axis-edge.ts';
import { angleBetween, areaBesideLines } from './cell-forms.ts';
import { AREA, MAX_CLEARANCE, MIN_CLEARANCE, SUM_STRIDE } from './cell-sums.ts';
import { checkRadius } from './check-radius.ts';
import { enteringRadius } from './entering-radius.ts';
import { isSecondary } from './is-secondary.ts';
import { sectorArea } from './sector-area.ts';

/**
 * Area in mm² that a flat cutter of radius `radiusMm` removes from the artwork: its opening by a disc, all
 * points that some disc of that radius inside it covers. Exact for the polygon, with true arcs, up to
 * rounding. 0 for an empty region or a cutter that fits nowhere.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * openedArea(medialAxis(bar), 1.5).toFixed(3); // 198.069
 *
 * @param radiusMm 0 or more; 0 gives the artwork's area
 * @throws {RangeError} when the radius is negative or not finite
 */
export function openedArea(axis: MedialAxis, radiusMm: number): number {
  checkRadius(radiusMm);
  const radius = enteringRadius(axis, radiusMm);
  const crossing: number[] = [];
  const area = wholeAndCorners(axis, radius, crossing);
  if (crossing.length === 0) {
    return area;
  }
  const edge = new AxisEdge(axis);
  let parts = 0;
  for (const e of crossing) {
    edge.load(e);
    parts += edge.area(radius, edge.r1, 0);
  }
  const discs = stoppedDiscs(axis, radius, crossing);
  return area + parts + sectorArea(discs, openArcs(discs));
}

/**
 * Area of the cells beside edges with a clearance of at least `radius` along their whole length, and of what
 * the cutter takes beside those that start in a corner. Appends other edges that pass the radius to
 * `crossing`. One loop, because it is called for many radii.
 */
function wholeAndCorners(axis: MedialAxis, radius: number, crossing: number[]): number {
  const { blocks, edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, nodeR } = axis;
  const { count, x, y, tx, ty } = axis.boundary;
  let area = 0;
  for (let at = 0, first = 0; at < blocks.length; at += SUM_STRIDE, first += BLOCK) {
    if (blocks[at + MIN_CLEARANCE] >= radius) {
      area += blocks[at + AREA];
      continue;
    }
    if (blocks[at + MAX_CLEARANCE] < radius) {
      continue;
    }
    const end = Math.min(first + BLOCK, edgeFrom.length);
    for (let e = first; e < end; e++) {
      const from = edgeFrom[e];
      const to = edgeTo[e];
      const a = nodeR[from];
      const b = nodeR[to];
      if (a < radius && b < radius) {
        continue;
      }
      const left = edgeLeft[e];
      const right = edgeRight[e];
      const vx = nodeX[to] - nodeX[from];
      const vy = nodeY[to] - nodeY[from];
      if (left < count && right < count && (a >= radius || a === 0)) {
        const along = vx * (tx[right] - tx[left]) + vy * (ty[right] - ty[left]);
        if (a >= radius) {
          area += areaBesideLines(along, a, b);
        } else {
          // no other disc reaches into the corner
          const turn = angleBetween(tx[left], ty[left], tx[right], ty[right]);
          area += (along * (b - radius) * (b + radius)) / (2 * b) + (radius * radius * turn) / 2;
        }
      } else if (a >= radius) {
        // up to the chord a segment cell is a trapezoid and a vertex cell a triangle: what a parabola takes
        // from one it gives to the other
        const forth =
          right < count
            ? (vx * tx[right] + vy * ty[right]) * (a + b)
            : (nodeY[from] - y[right - count]) * vx - (nodeX[from] - x[right - count]) * vy;
        const back =
          left < count
            ? (vx * tx[left] + vy * ty[left]) * (a + b)
            : (nodeY[from] - y[left - count]) * vx - (nodeX[from] - x[left - count]) * vy;
        area += (forth - back) / 2;
      } else if (!isSecondary(axis, e)) {
        crossing.push(e);
      }
    }
  }
  return area;
}
