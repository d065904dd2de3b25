import type { Point } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { axisParts } from './axis-parts.ts';
import { STROKE, strokeParts } from './stroke-parts.ts';

/** A separate part of the artwork: a letter, a dot, a square, a heart. */
export interface SeparatePart {
  /** Its number, which stroke lines bear too. */
  readonly part: number;
  /** Centre of its largest inscribed disc, mm. */
  readonly atMm: Point;
  /** Diameter of that disc, mm. */
  readonly widthMm: number;
  /** Widest that its strokes get, mm; 0 for a part without one, of which stroke widths say nothing. */
  readonly strokeMm: number;
}

const known = new WeakMap<MedialAxis, readonly SeparatePart[]>();

/** The separate parts of an artwork, each by its largest inscribed disc. Linear time, once for every axis. */
export function separateParts(axis: MedialAxis): readonly SeparatePart[] {
  const parts = known.get(axis) ?? partsOf(axis);
  known.set(axis, parts);
  return parts;
}

function partsOf(axis: MedialAxis): readonly SeparatePart[] {
  const { edgeFrom, edgeTo, nodeX, nodeY, nodeR, boundary } = axis;
  const { part, end } = strokeParts(axis);
  const partOf = axisParts(axis);
  const strokeR = new Float64Array(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    if (part[e] === STROKE) {
      const name = partOf[edgeFrom[e]];
      // the clearance never falls on the way up
      strokeR[name] = Math.max(strokeR[name], end[e] < 1 ? clearanceAt(axis, e, end[e]) : nodeR[edgeTo[e]]);
    }
  }
  // the node of each part's largest disc; parts in the order in which one shows
  const widest = new Int32Array(nodeR.length).fill(-1);
  const names: number[] = [];
  for (let k = 0; k < nodeR.length; k++) {
    const name = partOf[k];
    const best = widest[name];
    if (nodeR[k] > 0 && (best < 0 || nodeR[k] > nodeR[best])) {
      widest[name] = k;
      if (best < 0) {
        names.push(name);
      }
    }
  }
  return names.map((name) => {
    const k = widest[name];
    return {
      part: name,
      atMm: [nodeX[k] + boundary.originX, nodeY[k] + boundary.originY] as const,
      widthMm: 2 * nodeR[k],
      strokeMm: 2 * strokeR[name],
    };
  });
}

/** Clearance at a share of an edge from its low end, mm. */
function clearanceAt(axis: MedialAxis, e: number, share: number): number {
  const edge = new AxisEdge(axis);
  edge.load(e);
  edge.atShare(share);
  return edge.clearance;
}
