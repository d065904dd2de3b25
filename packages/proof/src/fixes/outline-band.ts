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
    const after = (i: number): Point => points[(i + 1) % points.length] as Point;
    const isNear = points.map((a, i) => boxes.some((box) => meets(box, a, after(i))));
    points.forEach((a, i) => {
      if (isNear[i] === true) {
        pieces.push(strip(a, after(i), radiusMm));
      }
      // where the band ends, it ends flush
      if (isNear[i] === true && isNear[(i + 1) % points.length] === true) {
        pieces.push(...corner(a, after(i), after(i + 1), radiusMm));
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

function strip(a: Point, b: Point, radiusMm: number): number[] {
  const [nx, ny] = normal(a, b, radiusMm);
  return [a[0] + nx, a[1] + ny, b[0] + nx, b[1] + ny, b[0] - nx, b[1] - ny, a[0] - nx, a[1] - ny];
}

/** What fills the gap between the strips of two edges on the outer side of their corner. */
function corner(a: Point, b: Point, c: Point, radiusMm: number): readonly number[][] {
  const [px, py] = normal(a, b, radiusMm);
  const [qx, qy] = normal(b, c, radiusMm);
  const turn = px * qy - py * qx;
  // the strips part on the side away from the turn
  const side = turn > 0 ? -1 : 1;
  const [mx, my] = [px + qx, py + qy];
  const reach = (2 * radiusMm * radiusMm) / (mx * mx + my * my);
  if (turn === 0 && reach < 1) {
    return [];
  }
  if (!(reach * Math.hypot(mx, my) <= MITRE_LIMIT * radiusMm)) {
    return [around(b, radiusMm)];
  }
  const at = (x: number, y: number): number[] => [b[0] + side * x, b[1] + side * y];
  return [[...b, ...at(px, py), ...at(mx * reach, my * reach), ...at(qx, qy)]];
}

/** A polygon around a circle. */
function around([x, y]: Point, radiusMm: number): number[] {
  const out = radiusMm / Math.cos(Math.PI / ROUND_SIDES);
  return Array.from({ length: ROUND_SIDES }, (_, k) => (2 * Math.PI * k) / ROUND_SIDES).flatMap((angle) => [
    x + out * Math.cos(angle),
    y + out * Math.sin(angle),
  ]);
}
