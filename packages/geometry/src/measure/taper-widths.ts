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
  const { originX, originY } = axis.boundary;
  const edge = new AxisEdge(axis);
  let lengthMm = 0;
  let [least, most] = [Infinity, 0];
  let narrowestAt: Point = [0, 0];
  for (const [e, from, to] of taperPieces(parts)) {
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
  return least === Infinity
    ? null
    : {
        narrowestMm: 2 * least,
        narrowestAt,
        widestMm: 2 * most,
        lengthMm,
        lengthNarrowerThan: (widthMm) => {
          const limit = enteringRadius(axis, widthMm / 2);
          let sum = 0;
          for (const [e, from, to] of taperPieces(parts)) {
            edge.load(e);
            sum +=
              edge.r0 < limit
                ? edge.lengthBetween(from, Math.max(from, Math.min(to, edge.shareOf(limit))))
                : 0;
          }
          return sum;
        },
      };
}

/** Axis edges that carry taper, with the shares between which they do. */
function* taperPieces({
  part,
  start,
  strokeStart,
}: StrokeParts): Generator<readonly [number, number, number]> {
  for (let e = 0; e < part.length; e++) {
    const to = part[e] === STROKE ? strokeStart[e] : 1;
    if (part[e] !== CORNER && to > start[e]) {
      yield [e, start[e], to];
    }
  }
}
