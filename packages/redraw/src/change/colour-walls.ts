import { combineShapes, resolveRegions } from '@pourproof/arrangement';
import type { Drawing, DrawnShape, Region } from '@pourproof/plane';
import { offsetRegion } from './offset-region.ts';

/**
 * A drawing with a wall of wood between its colours: what is drawn on top keeps its outline, and colours beneath or beside it give way as far
 * as the wall is wide. Of two colours that is the one whose last shape is drawn earlier.
 *
 * @param widthMm least width of the wall
 * @param colourOf tells colours apart
 * @throws {RangeError} when the width is not finite or negative
 */
export function colourWalls(
  drawing: Drawing,
  widthMm: number,
  colourOf: (shape: DrawnShape) => string,
): Drawing {
  if (!Number.isFinite(widthMm) || widthMm < 0) {
    throw new RangeError(`widthMm is ${widthMm}; give the width of the wall in mm`);
  }
  const { shapes, toleranceMm } = drawing;
  // the uppermost first
  const colours = [...new Set(shapes.toReversed().map(colourOf))];
  if (widthMm === 0 || colours.length < 2) {
    return drawing;
  }
  const off = new Map<string, readonly Region[]>();
  let above: readonly Region[] = [];
  for (const colour of colours) {
    off.set(colour, above);
    const own = shapes.filter((shape) => colourOf(shape) === colour).map(({ region }) => region);
    const left = combineShapes(own, above, 'subtract');
    above = [...above, filled(offsetRegion(left, widthMm, { joins: 'round', toleranceMm }).region)];
  }
  return {
    ...drawing,
    shapes: shapes.flatMap((shape) => {
      const beside = off.get(colourOf(shape)) ?? [];
      const region =
        beside.length === 0
          ? resolveRegions([shape.region]).region
          : combineShapes([shape.region], beside, 'subtract');
      return region.ringEnds.length === 0 ? [] : [{ ...shape, region: filled(region) }];
    }),
  };
}

function filled(region: ReturnType<typeof combineShapes>): Region {
  return { ...region, fillRule: 'nonzero' };
}
