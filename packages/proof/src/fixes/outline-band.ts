import { type Bounds, type Point, packRings, type Region, type Rings, ringCoords } from '@pourproof/plane';

/** A corner stays sharp where its point is at most this many times as far off as its sides (common practice for mitres). */
const MITRE_LIMIT = 4;
/** Sides of the polygon around a corner that is too sharp for that. */
const ROUND_SIDES = 24;

/**
 * A band along those edges of outlines that come into one of some boxes: everything within a distance of them, corners kept sharp.
 * Added to a shape it widens it there, taken from it it narrows it.
 */
export function outlineBand(rings: Rings, boxes: readonly Bounds[], radiusMm: number): Region {
  const pieces: number[][] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const points = pointsOf(ringCoords(rings, k));
    const at = (i: number): Point => points[(i + points.length) % points.length] as Point;
    const isNear = points.map((a, i) => boxes.some((box) => meets(box, a, at(i + 1))));
    // where the band ends, it ends flush
    const corners = points.map((b, i) =>
      isNear[i] === true && isNear.at(i - 1) === true
        ? cornerOf(at(i - 1), b, at(i + 1), radiusMm)
        : { outer: 0 as const },
    );
    points.forEach((a, i) => {
      if (isNear[i] === true) {
        pieces.push(strip([a, at(i + 1)], [corners[i], corners[(i + 1) % corners.length]], radiusMm));
      }
      if (corners[i]?.outer === 'blunt') {
        pieces.push(around(a, radiusMm));
      }
    });
  }
  return { ...packRings(pieces), fillRule: 'nonzero' };
}

/** The corners of a ring, no two in a row at the same place. */
function pointsOf(ring: Float64Array): readonly Point[] {
  const all = Array.from(
    { length: ring.length / 2 },
    (_, i): Point => [ring[2 * i] as number, ring[2 * i + 1] as number],
  );
  return all.filter(([x, y], i) => {
    const [u, v] = all[(i + 1) % all.length] as Point;
    return x !== u || y !== v;
  });
}

function meets([left, top, right, bottom]: Bounds, [ax, ay]: Point, [bx, by]: Point): boolean {
  return (
    Math.max(ax, bx) >= left &&
    Math.min(ax, bx) <= right &&
    Math.max(ay, by) >= top &&
    Math.min(ay, by) <= bottom
  );
}

/** The normal of an edge, on its left as seen with y up, as long as told. */
function normal([ax, ay]: Point, [bx, by]: Point, lengthMm: number): Point {
  const over = lengthMm / Math.hypot(bx - ax, by - ay);
  return [(ay - by) * over, (bx - ax) * over];
}

/**
 * Where the strips of two edges part: on the left (1) or the right (−1) of the way, by how far off their corner is there; nowhere (0); or so
 * far off that the corner is blunt.
 */
type Corner =
  | { readonly outer: 1 | -1; readonly toPoint: Point }
  | { readonly outer: 0 }
  | { readonly outer: 'blunt' };

function cornerOf(a: Point, b: Point, c: Point, radiusMm: number): Corner {
  const [px, py] = normal(a, b, radiusMm);
  const [qx, qy] = normal(b, c, radiusMm);
  const turn = px * qy - py * qx;
  const [mx, my] = [px + qx, py + qy];
  const reach = (2 * radiusMm * radiusMm) / (mx * mx + my * my);
  if (!(reach * Math.hypot(mx, my) <= MITRE_LIMIT * radiusMm)) {
    return { outer: 'blunt' };
  }
  return turn === 0 ? { outer: 0 } : { outer: turn > 0 ? -1 : 1, toPoint: [mx * reach, my * reach] };
}

/**
 * Both sides of an edge. It reaches to the very points of its corners, so that the band has one edge for each of the outline: a chord of
 * a circle is told by its length and its turn.
 */
function strip(
  [a, b]: readonly [Point, Point],
  ends: readonly [Corner | undefined, Corner | undefined],
  radiusMm: number,
): number[] {
  const straight = normal(a, b, radiusMm);
  const off = ([x, y]: Point, corner: Corner | undefined, side: 1 | -1): Point => {
    const [dx, dy] = corner?.outer === side ? corner.toPoint : straight;
    return [x + side * dx, y + side * dy];
  };
  return [off(a, ends[0], 1), off(b, ends[1], 1), b, off(b, ends[1], -1), off(a, ends[0], -1), a].flat();
}

/** A polygon around a circle. */
function around([x, y]: Point, radiusMm: number): number[] {
  const out = radiusMm / Math.cos(Math.PI / ROUND_SIDES);
  return Array.from({ length: ROUND_SIDES }, (_, k) => (2 * Math.PI * k) / ROUND_SIDES).flatMap((angle) => [
    x + out * Math.cos(angle),
    y + out * Math.sin(angle),
  ]);
}
