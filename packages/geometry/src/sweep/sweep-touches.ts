import { byGrain, type CleanRegion, type Point, pollStep, type Rings } from '@pourproof/plane';
import type { WoodGap } from './gaps-along.ts';
import { checkLength, type WoodAlong, woodAlong } from './wood-along.ts';

/** A place where what travels along the fibre from one wall comes out at another. */
export interface SweepTouch {
  /**
   * Where it comes out: `neighbour`, another part of the cut; `same-part`, the part it came from;
   * `board-edge`, the edge of the board.
   */
  readonly kind: 'neighbour' | 'same-part' | 'board-edge';
  /** Length of wood along the fibre where it is shortest. */
  readonly gapMm: number;
  /** The middle of that wood. */
  readonly atMm: Point;
  /** Extent of the place across the fibre. */
  readonly acrossMm: number;
  /** First rings of the parts on both sides, the smaller number first; the edge of the board is −1. */
  readonly rings: readonly [number, number];
}

/**
 * The places where the wood between two walls of a cut, or between a wall and the edge of the board, is at
 * most a given length along the fibre.
 *
 * There the band of `sweepAlong` reaches another stroke or leaves the board. Adjacent places of the same two
 * parts are one. Exact for polygons up to rounding; O(n log n). Sorted by gap, smallest first.
 *
 * @example
 * const rings = packRings([[0, 0, 10, 0, 10, 5, 0, 5], [12, 0, 20, 0, 20, 5, 12, 5]]);
 * const { region } = resolveRegions([{ ...rings, fillRule: 'nonzero' }]);
 * sweepTouches(region, 0, 3)[0].gapMm; // 2
 *
 * @param grainRad azimuth of the fibre, see {@link fibreVector}
 * @param lengthMm length along the fibre, mm, 0 or more
 * @param board outline of the board; without it the board has no edge
 * @throws {RangeError} when the length is negative or not finite
 * @public
 */
export function sweepTouches(
  region: CleanRegion,
  grainRad: number,
  lengthMm: number,
  board?: Rings,
): readonly SweepTouch[] {
  return touchesWithin(woodAlong(region, grainRad, board), lengthMm);
}

/** The {@link sweepTouches} of wood that is known, for one length after the other. */
export function touchesWithin({ gaps, hasEdge, fibre }: WoodAlong, lengthMm: number): readonly SweepTouch[] {
  checkLength(lengthMm);
  const short = gaps
    .filter(({ rings }) => hasEdge || rings[0] >= 0)
    .map((gap) => upTo(gap, lengthMm))
    .filter((gap) => gap !== undefined);
  return joinPlaces(short)
    .map(({ rings, gap, across, acrossMm }) => ({
      kind: kindOf(rings),
      gapMm: gap.length,
      atMm: fromAcrossAlong(across, gap.middle, fibre),
      acrossMm,
      rings,
    }))
    .sort(byGrain(({ gapMm }) => gapMm));
}

function kindOf(rings: readonly [number, number]): SweepTouch['kind'] {
  if (rings[0] < 0) {
    return 'board-edge';
  }
  return rings[0] === rings[1] ? 'same-part' : 'neighbour';
}

function fromAcrossAlong(across: number, along: number, [fx, fy]: Point): Point {
  return [fy * across + fx * along, fy * along - fx * across];
}

/** The part of a gap that is no longer than the limit. */
function upTo(gap: WoodGap, limit: number): WoodGap | undefined {
  const { from, to, lengthFrom, lengthTo, middleFrom, middleTo } = gap;
  if (lengthFrom <= limit && lengthTo <= limit) {
    return gap;
  }
  if (lengthFrom > limit && lengthTo > limit) {
    return undefined;
  }
  const t = (limit - lengthFrom) / (lengthTo - lengthFrom);
  const at = from + t * (to - from);
  const middle = middleFrom + t * (middleTo - middleFrom);
  return lengthFrom <= limit
    ? { ...gap, to: at, lengthTo: limit, middleTo: middle }
    : { ...gap, from: at, lengthFrom: limit, middleFrom: middle };
}

interface Place {
  readonly rings: readonly [number, number];
  readonly gap: { readonly length: number; readonly middle: number };
  readonly across: number;
  readonly acrossMm: number;
}

/** Joins gaps of the same parts whose extents across the fibre touch. */
function joinPlaces(gaps: readonly WoodGap[]): Place[] {
  const sorted = [...gaps].sort(
    (a, b) => a.rings[0] - b.rings[0] || a.rings[1] - b.rings[1] || a.from - b.from,
  );
  const places: Place[] = [];
  let start = 0;
  while (start < sorted.length) {
    pollStep();
    const first = sorted[start];
    let reach = first.to;
    let end = start + 1;
    while (end < sorted.length && isSamePair(sorted[end], first) && sorted[end].from <= reach) {
      reach = Math.max(reach, sorted[end].to);
      end++;
    }
    let best: WoodGap = first;
    for (let i = start; i < end; i++) {
      pollStep();
      if (leastOf(sorted[i]) < leastOf(best)) {
        best = sorted[i];
      }
    }
    const atStart = best.lengthFrom <= best.lengthTo;
    places.push({
      rings: first.rings,
      gap: { length: leastOf(best), middle: atStart ? best.middleFrom : best.middleTo },
      across: atStart ? best.from : best.to,
      acrossMm: reach - first.from,
    });
    start = end;
  }
  return places;
}

function isSamePair(a: WoodGap, b: WoodGap): boolean {
  return a.rings[0] === b.rings[0] && a.rings[1] === b.rings[1];
}

function leastOf(gap: WoodGap): number {
  return Math.min(gap.lengthFrom, gap.lengthTo);
}
