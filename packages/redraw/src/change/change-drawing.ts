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
import { colourWalls } from './colour-walls.ts';
import type { Joins } from './joins.ts';
import { leastStroke } from './least-stroke.ts';
import { offsetRegion } from './offset-region.ts';
import { partsByColour } from './parts-by-colour.ts';
import { isWithin, regionShapes } from './region-shapes.ts';
import { roundedCorners, roundedTips } from './round-corners.ts';

/** What is changed of a drawing, lengths in mm. */
export interface DrawingChange {
  /** By how much strokes become wider, half of it on either side; narrower where it is negative. */
  readonly widenMm: number;
  readonly joins: Joins;
  /** Width to which strokes are widened that are narrower after that. */
  readonly leastStrokeMm: number;
  /** What would close by that stays so wide, or as wide as it is drawn where that is less. */
  readonly keepApartMm: number;
  /** Radius to which outward corners and tips are rounded. */
  readonly roundTipsMm: number;
  /** Radius to which inward corners are rounded. */
  readonly roundCornersMm: number;
  /** Least wood between two colours: what is drawn on top stays, the other gives way. */
  readonly colourWallMm: number;
  /** Names of layers that count as colours; all others go by their paint. */
  readonly colourLayers: readonly string[];
}

/** Whether a change changes anything. */
function changesOutlines({ widenMm, leastStrokeMm, roundTipsMm, roundCornersMm }: DrawingChange): boolean {
  return widenMm !== 0 || leastStrokeMm !== 0 || roundTipsMm !== 0 || roundCornersMm !== 0;
}

/**
 * A drawing with its outlines changed: strokes widened or narrowed, then those that are still thin, then inward corners rounded, then outward
 * ones, and walls left between colours. Everything drawn is changed as one, so that letters
 * do not grow into each other; each colour keeps its part, and where two meet the border stays. What is kept apart or too
 * narrow to be rounded is told by notices.
 *
 * @throws {RangeError} when a length is not finite, or one but `widenMm` is negative
 */
export function changeDrawing(drawing: Drawing, change: DrawingChange): Drawing {
  const layers = new Set(change.colourLayers.map((name) => name.toLowerCase()));
  const paintOf: PaintOf = ({ colour, layer }) =>
    layers.has(layer.toLowerCase()) ? `layer ${layer.toLowerCase()}` : colour;
  const changed = changesOutlines(change) ? withOutlines(drawing, change, paintOf) : drawing;
  return colourWalls(changed, change.colourWallMm, paintOf);
}

/** What tells colours apart: a layer that the job names, else the paint. */
type PaintOf = (shape: DrawnShape) => string;

function withOutlines(drawing: Drawing, change: DrawingChange, paintOf: PaintOf): Drawing {
  const whole = resolveRegions(drawing.shapes.map(({ region }) => region)).region;
  const { region, notices, reachMm } = changedRegion(whole, change, drawing.toleranceMm);
  const colours = [...new Set(drawing.shapes.map(paintOf))];
  const parts =
    colours.length === 1
      ? [region]
      : partsByColour(visibleParts(drawing, colours, paintOf), { before: whole, after: region }, reachMm);
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
  { widenMm, leastStrokeMm, joins, keepApartMm, roundTipsMm, roundCornersMm }: DrawingChange,
  toleranceMm: number,
): { readonly region: CleanRegion; readonly notices: readonly Notice[]; readonly reachMm: number } {
  const setting = { joins, keepMm: keepApartMm, toleranceMm };
  const moved = offsetRegion(whole, widenMm / 2, setting);
  const widened = leastStroke(moved.region, leastStrokeMm, setting);
  const filled = roundedCorners(widened.region, roundCornersMm, toleranceMm);
  const rounded = roundedTips(filled.region, roundTipsMm, toleranceMm);
  return {
    region: rounded.region,
    reachMm: Math.max(0, widenMm / 2) + widened.reachMm,
    notices: changeNotices({
      widenMm: widenMm === 0 ? leastStrokeMm : widenMm,
      kept: [...moved.kept, ...widened.kept],
      keepMm: keepApartMm,
      corners: filled.narrow,
      tips: rounded.narrow,
    }),
  };
}

/** Shapes that are drawn one after the other in one paint. */
function runsOfPaint(shapes: readonly DrawnShape[], paintOf: PaintOf): readonly (readonly DrawnShape[])[] {
  const runs: DrawnShape[][] = [];
  for (const shape of shapes) {
    const [first] = runs.at(-1) ?? [];
    if (first !== undefined && paintOf(first) === paintOf(shape)) {
      runs.at(-1)?.push(shape);
    } else {
      runs.push([shape]);
    }
  }
  return runs;
}

/** What is seen of each colour: later shapes cover earlier ones. */
function visibleParts(
  drawing: Drawing,
  colours: readonly string[],
  paintOf: PaintOf,
): readonly CleanRegion[] {
  const parts = new Map(colours.map((paint) => [paint, [] as Region[]] as const));
  let above: Region[] = [];
  for (const run of runsOfPaint(drawing.shapes, paintOf).toReversed()) {
    const regions = run.map(({ region }) => region);
    const [first] = run;
    parts
      .get(first === undefined ? '' : paintOf(first))
      ?.push(filled(combineShapes(regions, above, 'subtract')));
    above = [...above, ...regions];
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
