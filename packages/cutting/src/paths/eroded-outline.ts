import type { MedialAxis } from '@pourproof/geometry';
import { type ArcRings, checkRadius, packArcRings } from '@pourproof/geometry';
import { StrandTracer } from './offset-strands.ts';

/**
 * Outline, in mm, of where the centre of a flat cutter of radius `radiusMm` may go: the points whose distance to the artwork's edge is at least
 * that. Straight along edges, true arcs around reflex points. Outer rings have positive area, holes negative; where the cutter just fits, a
 * ring shrinks to a line there and back, or to one point. No rings where it fits nowhere. Exact up to rounding; linear time.
 *
 * @param radiusMm 0 or more; 0 gives the artwork's own outline
 * @throws {RangeError} when the radius is negative or not finite
 */
export function erodedOutline(axis: MedialAxis, radiusMm: number): ArcRings {
  checkRadius(radiusMm);
  if (radiusMm === 0) {
    const { coords, ringEnds } = axis.region;
    return {
      coords: coords.slice(),
      ringEnds: ringEnds.slice(),
      bulges: new Float64Array(coords.length / 2),
    };
  }
  const { originX, originY } = axis.boundary;
  const all = Int32Array.from(axis.edgeFrom, (_, e) => e);
  const strands = new StrandTracer(axis, Infinity).trace(radiusMm, all, 0);
  return packArcRings(
    strands.map(({ points }) =>
      points.map((value, i) => value + (i % 3 === 0 ? originX : i % 3 === 1 ? originY : 0)),
    ),
  );
}
