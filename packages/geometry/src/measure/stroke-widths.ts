import { type Point, pollStep } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { enteringRadius } from './entering-radius.ts';
import { CORNER, STROKE, type StrokeParts, strokeParts } from './stroke-parts.ts';
import { type TaperWidths, taperWidths } from './taper-widths.ts';

/** Widths of the strokes of an artwork along its medial axis, without the branches into corners. */
export interface StrokeWidths {
  /** Smallest width of a stroke, mm, tapers excluded; where all is taper, its greatest width; `null` for an empty region. */
  readonly narrowestMm: number | null;
  /** Where that is, on the axis. `[0, 0]` for an empty region. */
  readonly narrowestAt: Point;
  /** The tapers; `null` where there is none. Where no stroke begins, as in a wedge, they are all that there is. */
  readonly tapers: TaperWidths | null;
  /** Length of all strokes and tapers along the axis, mm. */
  readonly lengthMm: number;
  /** Length of strokes and tapers, along the axis, that are narrower than a width, mm. */
  readonly lengthNarrowerThan: (widthMm: number) => number;
  /** Length in mm per bin of width; bin k holds widths from `edgesMm[k]` up to `edgesMm[k + 1]`. */
  readonly histogram: (edgesMm: readonly number[]) => Float64Array;
}

/**
 * The stroke widths of an artwork, exact along its medial axis; docs/method/strokes.md says what counts as a
 * stroke.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * strokeWidths(medialAxis(bar)).narrowestMm; // 5
 */
export function strokeWidths(axis: MedialAxis): StrokeWidths {
  const parts = strokeParts(axis);
  const { part, start, strokeStart, end, length, tops } = parts;
  const { edgeFrom, nodeR, nodeX, nodeY, boundary } = axis;
  const shape = new AxisEdge(axis);
  let lengthMm = 0;
  let narrowest = Infinity;
  let edgeThere = -1;
  for (let e = 0; e < part.length; e++) {
    pollStep();
    if (part[e] === CORNER) {
      continue;
    }
    let clearance = nodeR[edgeFrom[e]];
    if (start[e] === 0 && end[e] === 1) {
      lengthMm += length[e];
    } else {
      shape.load(e);
      lengthMm += shape.lengthBetween(start[e], end[e]);
    }
    if (part[e] === STROKE && strokeStart[e] > 0) {
      shape.load(e);
      shape.atShare(strokeStart[e]);
      clearance = shape.clearance;
    }
    if (part[e] === STROKE && clearance < narrowest) {
      narrowest = clearance;
      edgeThere = e;
    }
  }
  let narrowestAt: Point = [0, 0];
  if (edgeThere >= 0) {
    shape.load(edgeThere);
    shape.atShare(strokeStart[edgeThere]);
    narrowestAt = [shape.x + boundary.originX, shape.y + boundary.originY];
  }
  for (const top of tops) {
    pollStep();
    if (nodeR[top] < narrowest) {
      narrowest = nodeR[top];
      narrowestAt = [nodeX[top] + boundary.originX, nodeY[top] + boundary.originY];
    }
  }
  const lengthNarrowerThan = (widthMm: number): number => {
    const limit = enteringRadius(axis, widthMm / 2);
    let sum = 0;
    for (let e = 0; e < part.length; e++) {
      pollStep();
      if (part[e] !== CORNER && nodeR[edgeFrom[e]] < limit) {
        shape.load(e);
        const below = Math.min(end[e], shape.shareOf(limit));
        sum += shape.lengthBetween(start[e], Math.max(start[e], below));
      }
    }
    return sum;
  };
  return {
    narrowestMm: narrowest === Infinity ? null : 2 * narrowest,
    narrowestAt,
    tapers: taperWidths(axis, parts),
    lengthMm,
    lengthNarrowerThan,
    histogram: (edgesMm) => lengthsBetween(axis, parts, edgesMm),
  };
}

/** Length of strokes and tapers in each bin of width, mm; each edge is looked at once for all bins. */
function lengthsBetween(
  axis: MedialAxis,
  { part, start, end, length }: StrokeParts,
  edgesMm: readonly number[],
): Float64Array {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const limits = edgesMm.map((widthMm) => enteringRadius(axis, widthMm / 2));
  const shape = new AxisEdge(axis);
  const lengths = new Float64Array(Math.max(0, limits.length - 1));
  for (let e = 0; e < part.length; e++) {
    pollStep();
    if (part[e] === CORNER) {
      continue;
    }
    const [low, high] = [nodeR[edgeFrom[e]], nodeR[edgeTo[e]]];
    // bins are half open, so that the low end lies in the one whose upper limit is first above it
    const first = limits.findIndex((limit) => limit > low);
    if (first < 0) {
      continue;
    }
    if (start[e] === 0 && end[e] === 1 && first > 0 && limits[first] >= high) {
      lengths[first - 1] += length[e];
      continue;
    }
    shape.load(e);
    for (let k = first, from = start[e]; k < limits.length && from < end[e]; k++) {
      const to = Math.max(from, Math.min(end[e], shape.shareOf(limits[k])));
      if (k > 0) {
        lengths[k - 1] += shape.lengthBetween(from, to);
      }
      from = to;
    }
  }
  return lengths;
}
