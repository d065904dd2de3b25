import { combineShapes, resolveRegions } from '@pourproof/arrangement';
import {
  type Bounds,
  boundsOf,
  type CleanRegion,
  type Drawing,
  type DrawnShape,
  type Notice,
  packRings,
  type Region,
  ringCoords,
} from '@pourproof/plane';
import { changeNotices } from './change-notices.ts';
import type { Joins } from './joins.ts';
import { offsetRegion } from './offset-region.ts';
import { partsByColour } from './parts-by-colour.ts';
import { isWithin, regionShapes } from './region-shapes.ts';
import { roundedCorners, roundedTips } from './round-corners.ts';

/** What is changed of a drawing, lengths in mm. */
export interface DrawingChange {
  /** By how much strokes become wider, half of it on either side; narrower where it is negative. */
  readonly widenMm: number;
  readonly joins: Joins;
  /** What would close by that stays so wide, or as wide as it is drawn where that is less. */
  readonly keepApartMm: number;
  /** Radius to which outward corners and tips are rounded. */
  readonly roundTipsMm: number;
  /** Radius to which inward corners are rounded. */
  readonly roundCornersMm: number;
}

/** Whether a change changes anything. */
function changesOutlines({ widenMm, roundTipsMm, roundCornersMm }: DrawingChange): boolean {
  return widenMm !== 0 || roundTipsMm !== 0 || roundCornersMm !== 0;
}

/**
 * A drawing with its outlines changed: strokes widened or narrowed, then inward corners rounded, then outward ones. Everything drawn is changed as one, so that letters
 * do not grow into each other; each colour keeps its part, and where two meet the border stays. What is kept apart or too
 * narrow to be rounded is told by notices.
 *
 * @throws {RangeError} when a length is not finite, or one but `widenMm` is negative
 */
export function changeDrawing(drawing: Drawing, change: DrawingChange): Drawing {
  if (!changesOutlines(change)) {
    return drawing;
  }
  const whole = resolveRegions(drawing.shapes.map(({ region }) => region)).region;
  const { region, notices } = changedRegion(whole, change, drawing.toleranceMm);
  const colours = [...new Set(drawing.shapes.map(paintOf))];
  const parts =
    colours.length === 1
      ? [region]
      : partsByColour(
          visibleParts(drawing, colours),
          { before: whole, after: region },
          Math.max(0, change.widenMm) / 2,
        );
  return {
    ...drawing,
    shapes: colours.flatMap((paint, k) =>
      shapesOfColour(
        drawing.shapes.filter((shape) => paintOf(shape) === paint),
        parts[k] ?? region,
      ),
    ),
    notices: [...drawing.notices, ...notices],
  };
}

function changedRegion(
  whole: CleanRegion,
  { widenMm, joins, keepApartMm, roundTipsMm, roundCornersMm }: DrawingChange,
  toleranceMm: number,
): { readonly region: CleanRegion; readonly notices: readonly Notice[] } {
  const moved = offsetRegion(whole, widenMm / 2, { joins, keepMm: keepApartMm, toleranceMm });
  const filled = roundedCorners(moved.region, roundCornersMm, toleranceMm);
  const rounded = roundedTips(filled.region, roundTipsMm, toleranceMm);
  return {
    region: rounded.region,
    notices: changeNotices({
      widenMm,
      kept: moved.kept,
      keepMm: keepApartMm,
      corners: filled.narrow,
      tips: rounded.narrow,
    }),
  };
}

/** Paint and layer: what tells colours apart, whichever the job goes by. */
function paintOf({ colour, layer }: DrawnShape): string {
  return `${colour} ${layer}`;
}

/** What is seen of each colour: later shapes cover earlier ones. */
function visibleParts(drawing: Drawing, colours: readonly string[]): readonly CleanRegion[] {
  const parts = new Map(colours.map((paint) => [paint, [] as Region[]] as const));
  let above: Region[] = [];
  for (const shape of drawing.shapes.toReversed()) {
    parts.get(paintOf(shape))?.push(filled(combineShapes([shape.region], above, 'subtract')));
    above = [...above, shape.region];
  }
  return colours.map((paint) => combineShapes(parts.get(paint) ?? [], [], 'union'));
}

/** The shapes of one colour anew: each connected part goes to the first shape that it came from, others with that. */
function shapesOfColour(shapes: readonly DrawnShape[], region: CleanRegion): readonly DrawnShape[] {
  const own = shapes.map(({ region: drawn }) =>
    Array.from(drawn.ringEnds, (_, k) => boxed(ringCoords(drawn, k))),
  );
  const rings = shapes.map((): Float64Array[] => []);
  for (const part of regionShapes(region)) {
    rings[ownerOf(boxed(ringCoords(part, 0)), own)]?.push(
      ...Array.from(part.ringEnds, (_, k) => ringCoords(part, k)),
    );
  }
  return shapes.flatMap(({ isPieced: _, ...shape }, k) => {
    const made = rings[k] ?? [];
    return made.length === 0
      ? []
      : [{ ...shape, region: { ...packRings(made), fillRule: 'nonzero' as const } }];
  });
}

interface Boxed {
  readonly ring: Float64Array;
  readonly box: Bounds;
}

function boxed(ring: Float64Array): Boxed {
  return { ring, box: boundsOf(ring) };
}

/** Which shape a part came from: one of whose points it holds, or that holds one of its points. */
function ownerOf(outer: Boxed, shapes: readonly (readonly Boxed[])[]): number {
  const [left, top, right, bottom] = outer.box;
  const found = shapes.findIndex((rings) =>
    rings.some(
      ({ ring, box: [l, t, r, b] }) =>
        l <= right &&
        r >= left &&
        t <= bottom &&
        b >= top &&
        (isWithin(outer.ring, ring[0] ?? 0, ring[1] ?? 0) ||
          isWithin(ring, outer.ring[0] ?? 0, outer.ring[1] ?? 0)),
    ),
  );
  return Math.max(0, found);
}

function filled(region: CleanRegion): Region {
  return { ...region, fillRule: 'nonzero' };
}
