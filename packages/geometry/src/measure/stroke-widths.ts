import type { Point } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { CORNER, STROKE, strokeParts } from './stroke-parts.ts';

/** Widths of the strokes of an artwork, read along its medial axis without the branches into corners. */
export interface StrokeWidths {
  /** Smallest width of a stroke, mm; ends that taper to a point don't count. `null` for an empty region. */
  readonly narrowestMm: number | null;
  /** Where that is, on the axis. `[0, 0]` for an empty region. */
  readonly narrowestAt: Point;
  /** Length of all strokes along the axis, tapers included, mm. */
  readonly lengthMm: number;
  /** Length along the axis, tapers included, where the stroke is narrower than a width, mm. */
  readonly lengthNarrowerThan: (widthMm: number) => number;
  /** Length, mm, per bin of width: bin k holds widths from `edgesMm[k]` up to `edgesMm[k + 1]`. */
  readonly histogram: (edgesMm: readonly number[]) => Float64Array;
}

/** The stroke widths of the artwork of `axis`: exact along the axis; what counts as a stroke is told in docs/method. */
export function strokeWidths(axis: MedialAxis): StrokeWidths {
  const { part, tops } = strokeParts(axis);
  const { edgeFrom, nodeR, nodeX, nodeY, boundary } = axis;
  const shape = new AxisEdge(axis);
  const edges: number[] = [];
  let lengthMm = 0;
  let narrowest = -1;
  const offer = (node: number): void => {
    if (narrowest < 0 || nodeR[node] < nodeR[narrowest]) {
      narrowest = node;
    }
  };
  for (let e = 0; e < part.length; e++) {
    if (part[e] === CORNER) {
      continue;
    }
    edges.push(e);
    shape.load(e);
    lengthMm += shape.lengthBetween(0, 1);
    if (part[e] === STROKE) {
      offer(edgeFrom[e]);
    }
  }
  tops.forEach(offer);
  const lengthNarrowerThan = (widthMm: number): number => {
    let sum = 0;
    for (const e of edges) {
      shape.load(e);
      if (2 * shape.r0 < widthMm) {
        sum += shape.length(shape.r0, Math.min(shape.r1, widthMm / 2));
      }
    }
    return sum;
  };
  return {
    narrowestMm: narrowest < 0 ? null : 2 * nodeR[narrowest],
    narrowestAt:
      narrowest < 0 ? [0, 0] : [nodeX[narrowest] + boundary.originX, nodeY[narrowest] + boundary.originY],
    lengthMm,
    lengthNarrowerThan,
    histogram: (edgesMm) => {
      const below = edgesMm.map(lengthNarrowerThan);
      return Float64Array.from(below.slice(1), (length, k) => length - below[k]);
    },
  };
}
