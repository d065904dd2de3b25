import {
  type Bounds,
  boundsOf,
  type CleanRegion,
  type Point,
  packRings,
  type Rings,
  ringArea,
  ringCoords,
} from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';
import type { LevellingGrade } from './graded-parts.ts';
import type { LevellingMap } from './levelling-map.ts';

/** What levelling does to a part of the artwork, or that it is never cut. */
export type PicturedGradeId = LevellingGrade | 'uncut';

/** All of one grade, to be drawn. */
export interface PicturedGrade {
  readonly grade: PicturedGradeId;
  /** Strokes along their middle, open lines, mm. */
  readonly lines: readonly Float64Array[];
  /** Parts without a stroke by their outlines. */
  readonly outlines: readonly Rings[];
  /** Length of the strokes. */
  readonly lengthMm: number;
}

/** What levelling leaves of strokes and areas; plain data. */
export interface PicturedLevelling {
  readonly planMm: number;
  /** Every grade, the gravest first. */
  readonly grades: readonly PicturedGrade[];
  /** Where colour goes first; `null` if nothing is cut. */
  readonly goesFirstAt: Point | null;
  /** What may come off there beyond the plan, negative where the plan takes more than there is; 0 if nothing is cut. */
  readonly spareMm: number;
}

/** The shapes of a levelling map: strokes by their middle lines, dots, squares and hearts by their outlines, and what no bit enters. */
export function picturedLevelling(
  { planMm, stretches, areas, parts, lengthMm, uncut, uncutMm, first }: LevellingMap,
  cut: CleanRegion,
  artwork: CleanRegion,
): PicturedLevelling {
  const cutAround = partsAround(cut);
  const drawnAround = partsAround(artwork);
  const ofGrade = (grade: LevellingGrade): PicturedGrade => ({
    grade,
    lines: stretches.filter((each) => each.grade === grade).map(({ path }) => path),
    outlines: areas.filter((each) => each.grade === grade).map((each) => cutAround(each.first.atMm)),
    lengthMm: lengthMm[grade],
  });
  return {
    planMm,
    goesFirstAt: first?.atMm ?? null,
    spareMm: first === null ? 0 : first.goneMm - planMm,
    grades: [
      ofGrade('lost'),
      ofGrade('spoilt'),
      ofGrade('close'),
      ofGrade('holds'),
      {
        grade: 'uncut',
        lines: uncut,
        outlines: parts.filter((each) => each.first === null).map(({ atMm }) => drawnAround(atMm)),
        lengthMm: uncutMm,
      },
    ],
  };
}

interface BoxedRing {
  readonly ring: Float64Array;
  readonly area: number;
  readonly box: Bounds;
}

/** A function that gives the part of a region around a point: the smallest outline that holds it, with the holes in that; empty if none does. */
function partsAround(region: CleanRegion): (at: Point) => Rings {
  const rings = Array.from(region.ringEnds, (_, k): BoxedRing => {
    const ring = ringCoords(region, k);
    return { ring, area: ringArea(ring), box: boundsOf(ring) };
  });
  return (at) => {
    const [outer] = rings
      .filter((each) => each.area > 0 && holds(each, at))
      .toSorted((a, b) => a.area - b.area);
    if (outer === undefined) {
      return packRings([]);
    }
    const holes = rings.filter(
      ({ area, ring }) =>
        area < 0 && -area < outer.area && holds(outer, [ring[0] as number, ring[1] as number]),
    );
    return packRings([outer.ring, ...holes.map(({ ring }) => ring)]);
  };
}

function holds({ ring, box: [left, top, right, bottom] }: BoxedRing, [x, y]: Point): boolean {
  const isNear = x >= left && x <= right && y >= top && y <= bottom;
  return isNear && isInside(packRings([ring]) as CleanRegion, x, y);
}
