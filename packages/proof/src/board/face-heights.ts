import type { HeightReading } from '@pourproof/job';
import { applyTransform, type CleanRegion, type Point, ringCoords } from '@pourproof/plane';
import { clipSegment } from './clip-segment.ts';
import { type FittedSurface, fitSurface } from './flatness.ts';
import type { PlacedBoard } from './place-board.ts';

/**
 * Heights of the face under a cut, mm, relative to the point where the bit is set: the middle of the artwork.
 */
export interface FaceHeights {
  readonly highestMm: number;
  readonly lowestMm: number;
  /** Points in the artwork's frame. */
  readonly highestAt: Point;
  readonly lowestAt: Point;
  readonly surface: FittedSurface;
  /** Height of the face at a point, in the artwork's frame, above the point where the bit is set, mm. */
  readonly heightAt: (at: Point) => number;
}

/**
 * The highest and lowest point of the face under a cut; `null` if the board was not measured or nothing is
 * cut. Exact for the fitted surface: it is quadratic, so its extrema along an edge, and inside, have closed
 * forms.
 *
 * A levelling takes the face down to a plane that lies lower than its highest place: what was higher is flat then, what lies lower than that plane stays
 * as it was. Once all levellings have taken off as much as the face rises and falls, it is flat.
 *
 * @param zeroAt point at which the bit is set on the face, in the artwork's frame
 * @param levelled what earlier levellings have taken off the highest place of a region, mm
 */
export function faceHeights(
  cut: CleanRegion,
  zeroAt: Point,
  board: PlacedBoard,
  readings: readonly HeightReading[],
  levelled: { readonly region: CleanRegion; readonly byMm: number },
): FaceHeights | null {
  if (readings.length === 0 || cut.coords.length === 0) {
    return null;
  }
  const surface = fitSurface(readings);
  const zero = surface.heightAt(applyTransform(board.toBoard, zeroAt));
  const roughAt = (at: Point): number => surface.heightAt(applyTransform(board.toBoard, at)) - zero;
  const rough = extremesIn(cut, zeroAt, roughAt);
  if (levelled.byMm === 0) {
    return { surface, heightAt: roughAt, ...rough };
  }
  const planeMm = extremesIn(levelled.region, zeroAt, roughAt).highestMm - levelled.byMm;
  const bitAt = Math.min(0, planeMm);
  const heightAt = (at: Point): number => Math.min(roughAt(at), planeMm) - bitAt;
  return {
    surface,
    heightAt,
    ...rough,
    highestMm: Math.min(rough.highestMm, planeMm) - bitAt,
    lowestMm: Math.min(rough.lowestMm, planeMm) - bitAt,
  };
}

/** Highest and lowest place of a quadratic surface over a region. */
function extremesIn(
  region: CleanRegion,
  zeroAt: Point,
  heightAt: (at: Point) => number,
): Pick<FaceHeights, 'highestMm' | 'lowestMm' | 'highestAt' | 'lowestAt'> {
  let highestMm = Number.NEGATIVE_INFINITY;
  let lowestMm = Number.POSITIVE_INFINITY;
  let highestAt: Point = zeroAt;
  let lowestAt: Point = zeroAt;
  const offer = (at: Point): void => {
    const height = heightAt(at);
    if (height > highestMm) {
      [highestMm, highestAt] = [height, at];
    }
    if (height < lowestMm) {
      [lowestMm, lowestAt] = [height, at];
    }
  };
  for (let k = 0; k < region.ringEnds.length; k++) {
    const ring = ringCoords(region, k);
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const from: Point = [ring[i] as number, ring[i + 1] as number];
      const to: Point = [ring[j] as number, ring[j + 1] as number];
      offer(from);
      const turn = extremumBetween(heightAt, from, to);
      if (turn !== null) {
        offer(turn);
      }
    }
  }
  const summit = stationaryPoint(heightAt, zeroAt);
  if (summit !== null && clipSegment(region, [...summit, ...summit], [0, 0]).length > 0) {
    offer(summit);
  }
  return { highestMm, lowestMm, highestAt, lowestAt };
}

/** Extremum of a quadratic surface between two points, from its heights at both and half-way. */
function extremumBetween(heightAt: (at: Point) => number, from: Point, to: Point): Point | null {
  const between = (share: number): Point => [
    from[0] + share * (to[0] - from[0]),
    from[1] + share * (to[1] - from[1]),
  ];
  const [a, m, b] = [heightAt(from), heightAt(between(0.5)), heightAt(to)];
  const curve = 2 * (a - 2 * m + b);
  const slope = 4 * m - 3 * a - b;
  const share = curve === 0 ? Number.NaN : -slope / (2 * curve);
  return share > 0 && share < 1 ? between(share) : null;
}

/**
 * Step of the finite differences for slopes and curvatures, mm: exact for a quadratic surface, up to
 * rounding.
 */
const DIFFERENCE_STEP_MM = 50;

/** A determinant below this, relative to the square of the curvatures, is 0: rounding. */
const SINGULAR_REL_TOL = 1e-12;

/** The stationary point of a quadratic surface, if there is exactly one. */
function stationaryPoint(heightAt: (at: Point) => number, [x, y]: Point): Point | null {
  const h = DIFFERENCE_STEP_MM;
  const middle = heightAt([x, y]);
  const [east, west] = [heightAt([x + h, y]), heightAt([x - h, y])];
  const [south, north] = [heightAt([x, y + h]), heightAt([x, y - h])];
  const corner = heightAt([x + h, y + h]);
  const gx = (east - west) / (2 * h);
  const gy = (south - north) / (2 * h);
  const xx = (east - 2 * middle + west) / (h * h);
  const yy = (south - 2 * middle + north) / (h * h);
  const xy = (corner - east - south + middle) / (h * h);
  const determinant = xx * yy - xy * xy;
  const size = (Math.abs(xx) + Math.abs(yy) + Math.abs(xy)) ** 2;
  if (Math.abs(determinant) <= SINGULAR_REL_TOL * size) {
    return null;
  }
  return [x + (xy * gy - yy * gx) / determinant, y + (xy * gx - xx * gy) / determinant];
}
