import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge, findLevelCrossings } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { EdgeCells } from '../cells/edge-cells.ts';
import { type EdgePart, edgeParts } from '../cells/edge-parts.ts';
import type { Reach } from '../slices/step-cut.ts';
import type { WallCollector } from './wall-collector.ts';

/**
 * A level surface: a slice, or its part outside the slice of the same centres with the smaller reach `butMm`.
 */
export interface LevelSurface extends Reach {
  readonly butMm?: number;
  /** Area to which all elements together are scaled, mm²; not scaled by default. */
  readonly totalMm2?: number;
  /** Approximate size limit of an element, mm. */
  readonly longestMm: number;
}

/** Greatest number of elements across one cell. */
const MAX_ACROSS = 40;
/** Tolerance of an area beside an axis edge, relative to the square of its largest clearance: rounding. */
const CELL_AREA_REL_TOL = 1e-12;

/**
 * Adds a level surface: elements between wall and axis on both sides of each axis edge, and the sectors at
 * level crossings.
 */
export function addLevelCells(walls: WallCollector, axis: MedialAxis, surface: LevelSurface): void {
  const { centreMm, reachMm, butMm, totalMm2, longestMm } = surface;
  const { originX, originY } = axis.boundary;
  const edge = new AxisEdge(axis);
  const cells = new EdgeCells(axis, edge);
  const crossings = findLevelCrossings(axis, centreMm);
  const elements: Element[] = [];
  for (let e = 0; e < axis.edgeFrom.length; e++) {
    pollStep();
    if (axis.nodeR[axis.edgeTo[e]] < centreMm || edge.isSecondary(e)) {
      continue;
    }
    edge.load(e);
    for (const part of edgeParts(edge, centreMm, longestMm)) {
      pollStep();
      addAcross(axis, edge, cells, part, surface, elements);
    }
    const crossing = crossings.ofEdge[e];
    if (crossing >= 0) {
      const but = butMm ?? 0;
      const area = (crossings.sweep[crossing] / 2) * (reachMm * reachMm - but * but);
      elements.push([crossings.x[crossing], crossings.y[crossing], area]);
    }
  }
  const sum = elements.reduce((total, [, , area]) => total + area, 0);
  const scale = totalMm2 !== undefined && sum > 0 ? totalMm2 / sum : 1;
  for (const [x, y, area] of elements) {
    pollStep();
    walls.floor(originX + x, originY + y, area * scale);
  }
}

type Element = readonly [x: number, y: number, areaMm2: number];

/**
 * Adds the elements beside one stretch of an axis edge: their sum is exact, and divided by distance from the
 * wall.
 */
function addAcross(
  axis: MedialAxis,
  edge: AxisEdge,
  cells: EdgeCells,
  { from, to, share, x, y, clearance }: EdgePart,
  { centreMm, reachMm, butMm, longestMm }: LevelSurface,
  elements: Element[],
): void {
  const near = centreMm - reachMm;
  const far = (h: number): number => (butMm === undefined ? h : centreMm - butMm);
  const tolerance = CELL_AREA_REL_TOL * to * to;
  const segment = cells.integral(
    from,
    to,
    { segment: (h) => far(h) - near, vertex: () => 0, kinks: [] },
    tolerance,
  );
  const perRadian = (h: number): number => (far(h) ** 2 - near ** 2) / 2;
  const vertex = cells.integral(from, to, { segment: () => 0, vertex: perRadian, kinks: [] }, tolerance);
  const width = far(clearance) - near;
  const count = Math.min(MAX_ACROSS, Math.max(1, Math.ceil(width / longestMm)));
  const { count: n, x: px, y: py, tx, ty } = axis.boundary;
  for (const site of [edge.left, edge.right]) {
    const isVertex = site >= n;
    const half = edge.kind === 'segment-vertex' ? 1 : 0.5;
    const area = (isVertex ? vertex : segment) * half * share;
    const [nx, ny] = isVertex
      ? [(x - px[site - n]) / clearance, (y - py[site - n]) / clearance]
      : [-ty[site], tx[site]];
    for (let k = 0; k < count; k++) {
      const distance = near + (width * (k + 0.5)) / count;
      const weight = isVertex ? distance / (near + width / 2) : 1;
      const back = clearance - distance;
      elements.push([x - back * nx, y - back * ny, (area * weight) / count]);
    }
  }
}
