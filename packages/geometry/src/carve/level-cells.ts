import { AxisEdge } from '../measure/axis-edge.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { findMouths } from '../outline/mouths.ts';
import type { Reach } from './cut-layer.ts';
import type { WallCollector } from './wall-collector.ts';

/** A level surface: a slice, or what of it lies outside the slice of the same centres with a smaller reach. */
export interface LevelSurface extends Reach {
  readonly butMm?: number;
  /** What all elements together are scaled to; default: as they are. */
  readonly totalMm2?: number;
}

/** Adds a level surface as one element for each axis edge, at the middle of that edge, with the sectors of its mouths. */
export function addLevelCells(walls: WallCollector, axis: MedialAxis, surface: LevelSurface): void {
  const { centreMm, reachMm, butMm, totalMm2 } = surface;
  const { originX, originY } = axis.boundary;
  const edge = new AxisEdge(axis);
  const mouths = findMouths(axis, centreMm);
  const elements: [number, number, number][] = [];
  let sum = 0;
  for (let e = 0; e < axis.edgeFrom.length; e++) {
    if (axis.nodeR[axis.edgeTo[e]] < centreMm || edge.isSpoke(e)) {
      continue;
    }
    edge.load(e);
    const low = Math.max(edge.r0, centreMm);
    const mouth = mouths.ofEdge[e];
    const sectors = mouth < 0 ? 0 : mouths.sweep[mouth] / 2;
    let area = edge.area(low, edge.r1, centreMm - reachMm) + sectors * reachMm * reachMm;
    if (butMm !== undefined) {
      area -= edge.area(low, edge.r1, centreMm - butMm) + sectors * butMm * butMm;
    }
    edge.atShare((edge.shareOf(low) + 1) / 2);
    elements.push([originX + edge.x, originY + edge.y, area]);
    sum += area;
  }
  const scale = totalMm2 !== undefined && sum > 0 ? totalMm2 / sum : 1;
  for (const [x, y, area] of elements) {
    walls.floor(x, y, area * scale);
  }
}
