import { booleans, resolveRegions } from '@pourproof/arrangement';
import {
  type Bounds,
  type CleanRegion,
  type Drawing,
  type DrawnShape,
  type Region,
  scaling,
  transformRings,
} from '@pourproof/plane';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { movedApart } from './moved-apart.ts';
import { outlineBand } from './outline-band.ts';

/** A drawing with its shapes scaled about the origin, as a reader does that is asked for another size. */
export function scaledDrawing(drawing: Drawing, factor: number): Drawing {
  const by = scaling(factor);
  return withRegions(drawing, ({ region }) => ({
    ...transformRings(by, region),
    fillRule: region.fillRule,
  }));
}

/**
 * A drawing with a way out made that is work on it; `null` where it takes a maker's eye.
 *
 * What is widened is widened at the places of the finding alone; of two colours without wood between, the later one of the
 * alphabet gives way.
 */
export function changedDrawing(drawing: Drawing, fix: Fix, finding: Finding): Drawing | null {
  switch (fix.do) {
    case 'widen':
      return widened(drawing, fix, finding);
    case 'part-by-wall':
      return parted(drawing, fix.widthMm, finding);
    case 'move-apart':
      return movedApart(drawing, fix.byMm, finding);
    default:
      return null;
  }
}

function widened(drawing: Drawing, { what, byMm }: Fix & { do: 'widen' }, finding: Finding): Drawing {
  const boxes = boxesOf(finding, byMm);
  return withRegions(drawing, ({ region }) => {
    const band = outlineBand(region, boxes, byMm / 2);
    if (band.ringEnds.length === 0) {
      return region;
    }
    return filled(what !== 'wood' ? clean(region, band) : booleans(clean(region), clean(band), 'subtract'));
  });
}

function parted(drawing: Drawing, widthMm: number, finding: Finding): Drawing {
  const boxes = boxesOf(finding, widthMm);
  const colours = [...new Set(drawing.shapes.map(({ colour }) => colour))].toSorted();
  const before = (colour: string): readonly Region[] =>
    drawing.shapes
      .filter((shape) => colours.indexOf(shape.colour) < colours.indexOf(colour))
      .map(({ region }) => region);
  const keepOff = new Map(
    colours.map((colour) => {
      const regions = before(colour);
      return [colour, clean(...regions, ...regions.map((region) => outlineBand(region, boxes, widthMm)))];
    }),
  );
  return withRegions(drawing, ({ region, colour }) => {
    const off = keepOff.get(colour);
    return off === undefined || off.ringEnds.length === 0
      ? region
      : filled(booleans(clean(region), off, 'subtract'));
  });
}

function withRegions(drawing: Drawing, change: (shape: DrawnShape) => Region): Drawing {
  return { ...drawing, shapes: drawing.shapes.map((shape) => ({ ...shape, region: change(shape) })) };
}

function clean(...regions: readonly Region[]): CleanRegion {
  return resolveRegions(regions).region;
}

function filled(region: CleanRegion): Region {
  return { ...region, fillRule: 'nonzero' };
}

/** Boxes around the places of a finding, with the walls beside them. */
function boxesOf({ where, limit }: Finding, byMm: number): readonly Bounds[] {
  return where.map((place) =>
    boxOf(place, byMm + (limit.unit === 'mm' ? limit.value : (place.widthMm ?? byMm))),
  );
}

function boxOf({ atMm, outline }: FindingPlace, marginMm: number): Bounds {
  const points = [atMm, ...outline.flat()];
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const least = (values: readonly number[]): number =>
    values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = (values: readonly number[]): number =>
    values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  return [least(xs) - marginMm, least(ys) - marginMm, most(xs) + marginMm, most(ys) + marginMm];
}
