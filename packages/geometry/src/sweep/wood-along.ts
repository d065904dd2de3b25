import {
  type CleanRegion,
  type Point,
  packRings,
  pollStep,
  type Rings,
  ringCoords,
  ringsBounds,
} from '@pourproof/plane';
import { fibreVector } from '../measure/fibre-vector.ts';
import { gapsAlong, type WoodGap } from './gaps-along.ts';

/** The wood beside a cut along the fibre, whatever travels in it. */
export interface WoodAlong {
  /** In the frame whose y runs along the fibre. */
  readonly gaps: readonly WoodGap[];
  /** Whether the board has an edge; without one, wood beside which no other part of the cut lies goes on for ever. */
  readonly hasEdge: boolean;
  /** Direction of the fibre. */
  readonly fibre: Point;
}

/**
 * The wood between the walls of a cut along the fibre, and between them and the edge of the board: found once for travels of any length. Exact for
 * polygons up to rounding; O(n log n).
 *
 * @param grainRad azimuth of the fibre, see {@link fibreVector}
 * @param board outline of the board; without it the board has no edge
 */
export function woodAlong(region: CleanRegion, grainRad: number, board?: Rings): WoodAlong {
  const fibre = fibreVector(grainRad);
  const hasEdge = board !== undefined;
  const gaps =
    region.ringEnds.length === 0
      ? []
      : gapsAlong(alongFibre(region, fibre), alongFibre(board ?? boxAround(region), fibre), Infinity);
  return { gaps, hasEdge, fibre };
}

/**
 * Area of the wood within a length of the cut along the fibre, mm²: that of `sweepAlong`, less what lies beyond the edge of the board.
 *
 * @param lengthMm 0 or more
 * @throws {RangeError} when the length is negative or not finite
 */
export function sweptArea({ gaps, hasEdge }: WoodAlong, lengthMm: number): number {
  checkLength(lengthMm);
  let area = 0;
  for (const { from, to, lengthFrom, lengthTo, rings } of gaps) {
    pollStep();
    const isBetween = rings[0] >= 0;
    const reach = isBetween ? 2 * lengthMm : lengthMm;
    area += (to - from) * (isBetween || hasEdge ? meanUpTo(lengthFrom, lengthTo, reach) : reach);
  }
  return area;
}

/** Mean of what changes evenly from a to b, where that is no more than the limit, and of the limit elsewhere. */
function meanUpTo(a: number, b: number, limit: number): number {
  const [low, high] = a < b ? [a, b] : [b, a];
  if (high <= limit) {
    return (low + high) / 2;
  }
  const over = high - Math.max(low, limit);
  return low >= limit ? limit : (low + high) / 2 - (over * over) / (2 * (high - low));
}

/** @throws {RangeError} when the length is negative or not finite */
export function checkLength(lengthMm: number): void {
  if (!(lengthMm >= 0 && Number.isFinite(lengthMm))) {
    throw new RangeError(`lengthMm must be a finite length of 0 or more, not ${lengthMm}`);
  }
}

/** A box with wood on every side. */
function boxAround(region: Rings): Rings {
  const [minX, minY, maxX, maxY] = ringsBounds(region);
  const m = maxX - minX + (maxY - minY) + 1;
  return packRings([[minX - m, minY - m, maxX + m, minY - m, maxX + m, maxY + m, minX - m, maxY + m]]);
}

/** Rings turned so that the fibre runs along +y. */
function alongFibre(rings: Rings, [fx, fy]: Point): Rings {
  return packRings(
    Array.from(rings.ringEnds, (_, k) => {
      const ring = ringCoords(rings, k);
      const out = new Float64Array(ring.length);
      for (let i = 0; i < ring.length; i += 2) {
        pollStep();
        out[i] = fy * ring[i] - fx * ring[i + 1];
        out[i + 1] = fx * ring[i] + fy * ring[i + 1];
      }
      return out;
    }),
  );
}
