import type { Point } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { enteringRadius } from './entering-radius.ts';
import { CORNER, STROKE, type StrokeParts } from './stroke-parts.ts';

/** Widths of what narrows steadily to its end, from the tip on to where a stroke begins, or all along where none does. */
export interface TaperWidths {
  /** Smallest width, mm: 0 at a tip that ends in a point. */
  readonly narrowestMm: number;
  /** Where that is, on the axis. */
  readonly narrowestAt: Point;
  /** Greatest width, mm. */
  readonly widestMm: number;
  /** Length of all tapers along the axis, mm. */
  readonly lengthMm: number;
  /** Length of tapers, along the axis, that are narrower than a width, mm. */
  readonly lengthNarrowerThan: (widthMm: number) => number;
}

/** The widths of all tapers of an artwork; `null` where there is none. Linear time. */
export function taperWidths(axis: MedialAxis, parts: StrokeParts): TaperWidths | null {
  const { part, start } = parts;
  const { originX, originY } = axis.boundary;
  const edge = new AxisEdge(axis);
  let lengthMm = 0;
  let [least, most] = [Infinity, 0];
  let narrowestAt: Point = [0, 0];
  for (let e = 0; e < part.length; e++) {
    const from = start[e];
    const to = taperEndOn(parts, e);
    if (to <= from) {
      continue;
    }
    edge.load(e);
    lengthMm += edge.lengthBetween(from, to);
    edge.atShare(to);
    most = Math.max(most, edge.clearance);
    edge.atShare(from);
    if (edge.clearance < least) {
      least = edge.clearance;
      narrowestAt = [edge.x + originX, edge.y + originY];
    }
  }
  const lengthNarrowerThan = (widthMm: number): number => {
    const limit = enteringRadius(axis, widthMm / 2);
    let sum = 0;
    for (let e = 0; e < part.length; e++) {
      const from = start[e];
      const to = taperEndOn(parts, e);
      if (to > from) {
        edge.load(e);
        const end = edge.r0 < limit ? Math.max(from, Math.min(to, edge.shareOf(limit))) : from;
        sum += edge.lengthBetween(from, end);
      }
    }
    return sum;
  };
  return least === Infinity
    ? null
    : { narrowestMm: 2 * least, narrowestAt, widestMm: 2 * most, lengthMm, lengthNarrowerThan };
}

/** Share of an axis edge up to which it carries taper, from where its corner ends; 0 where it carries none. */
function taperEndOn({ part, strokeStart, end }: StrokeParts, e: number): number {
  return part[e] === CORNER ? 0 : part[e] === STROKE ? strokeStart[e] : end[e];
}
