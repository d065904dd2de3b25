import { type Point, UnionFind } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { STROKE, strokeParts } from './stroke-parts.ts';

/** A separate part of the artwork that has no stroke: a dot, a square, a heart, a star. */
export interface CompactPart {
  /** Centre of its largest inscribed disc, mm. */
  readonly atMm: Point;
  /** Diameter of that disc, mm. */
  readonly widthMm: number;
}

/**
 * The separate parts of an artwork that stroke widths say nothing of, since no stretch of their axis is longer than it is wide: each by its largest
 * inscribed disc. Linear time.
 */
export function compactParts(axis: MedialAxis): readonly CompactPart[] {
  const { edgeFrom, edgeTo, nodeX, nodeY, nodeR, boundary } = axis;
  const { part } = strokeParts(axis);
  const together = new UnionFind(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    together.join(edgeFrom[e], edgeTo[e]);
  }
  const hasStroke = new Uint8Array(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    if (part[e] === STROKE) {
      hasStroke[together.find(edgeFrom[e])] = 1;
    }
  }
  const widest = new Map<number, number>();
  for (let k = 0; k < nodeR.length; k++) {
    const name = together.find(k);
    const best = widest.get(name);
    if (hasStroke[name] === 0 && nodeR[k] > 0 && (best === undefined || nodeR[k] > nodeR[best])) {
      widest.set(name, k);
    }
  }
  return Array.from(widest.values(), (k) => ({
    atMm: [nodeX[k] + boundary.originX, nodeY[k] + boundary.originY] as const,
    widthMm: 2 * nodeR[k],
  }));
}
