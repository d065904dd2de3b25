import { CORNER, type StrokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import type { LevelCrossings } from './level-crossings.ts';

/** Level crossings without those that close nothing but a facet. */
export interface WithoutFacets {
  readonly crossings: LevelCrossings;
  /** 1 for axis edges that lead out of a facet. */
  readonly isFacet: Uint8Array;
  readonly facetCount: number;
  readonly facetAreaMm2: number;
}

/**
 * Sets apart the corners that a cutter misses by less than `toleranceMm`, told by the one axis edge that leads out of each. A flattened arc has one
 * at every point, so that mostly they are nearly all that a cutter leaves, and none of them is looked at any closer.
 */
export function withoutFacets(
  axis: MedialAxis,
  crossings: LevelCrossings,
  { part }: StrokeParts,
  toleranceMm: number,
): WithoutFacets {
  const { edgeFrom, edgeLeft, edgeRight, nodeX, nodeY, nodeR, boundary } = axis;
  const { radius, edge, x, y, angle, sweep, closes } = crossings;
  const isFacet = new Uint8Array(edgeFrom.length);
  const ofEdge = crossings.ofEdge.slice();
  const kept: number[] = [];
  let facetAreaMm2 = 0;
  for (let k = 0; k < edge.length; k++) {
    const e = edge[k];
    const from = edgeFrom[e];
    const isCorner =
      nodeR[from] === 0 &&
      edgeLeft[e] < boundary.count &&
      edgeRight[e] < boundary.count &&
      part[e] === CORNER;
    const dx = x[k] - nodeX[from];
    const dy = y[k] - nodeY[from];
    if (isCorner && Math.sqrt(dx * dx + dy * dy) - radius < toleranceMm) {
      isFacet[e] = 1;
      ofEdge[e] = -1;
      facetAreaMm2 += radius * radius * (Math.tan(sweep[k] / 2) - sweep[k] / 2);
    } else {
      ofEdge[e] = kept.length;
      kept.push(k);
    }
  }
  const pick = (list: readonly number[]): number[] => kept.map((k) => list[k]);
  return {
    crossings: {
      radius,
      edge: pick(edge),
      x: pick(x),
      y: pick(y),
      angle: pick(angle),
      sweep: pick(sweep),
      closes: pick(closes),
      ofEdge,
    },
    isFacet,
    facetCount: edge.length - kept.length,
    facetAreaMm2,
  };
}
