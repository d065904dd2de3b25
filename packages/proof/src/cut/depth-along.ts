import { type CleanRegion, type Point, ringCoords } from '@pourproof/plane';
import type { CutShape } from './cut-shape.ts';

/** Shares of an edge at which the stroke beside it is measured; its ends lie in corners. */
const SHARES = [0.02, 0.25, 0.5, 0.75, 0.98];

/**
 * A function that gives the greatest depth beside an edge of a cut's outline, mm. Bits that clear cut at full depth everywhere; a V is as deep as the
 * stroke is wide there: twice the radius of the disc within the cut that touches the edge.
 *
 * @param mostMm greatest depth of the whole cut
 */
export function depthAlong(
  cut: CleanRegion,
  { includedRad, sectionAt }: CutShape,
  mostMm: number,
): (from: Point, to: Point) => number {
  if (includedRad === null) {
    return () => mostMm;
  }
  const rings = Array.from(cut.ringEnds, (_, k) => ringCoords(cut, k));
  return ([ax, ay], [bx, by]) => {
    const length = Math.hypot(bx - ax, by - ay);
    // the inside of a clean ring is on the side of (−ey, ex)
    const inward: Point = [-(by - ay) / length, (bx - ax) / length];
    const depths = SHARES.map((share) => {
      const radius = touchingRadius([ax + share * (bx - ax), ay + share * (by - ay)], inward, rings);
      return Number.isFinite(radius) ? (sectionAt(2 * radius)?.depthMm ?? 0) : mostMm;
    });
    return Math.min(mostMm, Math.max(...depths));
  };
}

/** Cosines this near to 1 are those of walls that run alike, whose disc has no end. */
const PARALLEL_TOL = 1e-9;

/** Radius of the largest disc within outlines that touches a point of theirs from the side of a normal; infinite where nothing stands opposite. */
function touchingRadius(at: Point, normal: Point, rings: readonly Float64Array[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [px, py, qx, qy] = [ring[i], ring[i + 1], ring[j], ring[j + 1]] as [
        number,
        number,
        number,
        number,
      ];
      least = Math.min(
        least,
        radiusToPoint(at, normal, [px, py]),
        radiusToWall(at, normal, [px, py], [qx, qy]),
      );
    }
  }
  return least;
}

/** The disc that touches at a point and reaches another: |q − p|²/(2 n·(q − p)). */
function radiusToPoint([x, y]: Point, [nx, ny]: Point, [qx, qy]: Point): number {
  const ahead = nx * (qx - x) + ny * (qy - y);
  return ahead > PARALLEL_TOL ? ((qx - x) ** 2 + (qy - y) ** 2) / (2 * ahead) : Number.POSITIVE_INFINITY;
}

/** The disc that touches at a point and a wall with inward normal m: d/(1 − n·m), where it touches the wall within its ends. */
function radiusToWall([x, y]: Point, [nx, ny]: Point, [px, py]: Point, [qx, qy]: Point): number {
  const length = Math.hypot(qx - px, qy - py);
  const [ux, uy] = [(qx - px) / length, (qy - py) / length];
  const distance = -uy * (x - px) + ux * (y - py);
  const slack = 1 - (nx * -uy + ny * ux);
  if (distance <= PARALLEL_TOL || slack <= PARALLEL_TOL) {
    return Number.POSITIVE_INFINITY;
  }
  const radius = distance / slack;
  const along = ux * (x + radius * nx - px) + uy * (y + radius * ny - py);
  return along >= 0 && along <= length ? radius : Number.POSITIVE_INFINITY;
}
