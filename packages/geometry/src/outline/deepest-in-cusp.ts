import { BoxIndex, type Point, type Rings } from '@pourproof/plane';
import Delaunator from 'delaunator';
import type { ArcRings } from './arc-rings.ts';
import { NearCentres } from './near-centres.ts';

/** A point of a cusp, and how far the cusp stands off the wall there, or beyond the nearest disc. */
interface Deepest {
  readonly atMm: Point;
  readonly offMm: number;
}

/**
 * A point well inside a cusp. Between two discs and a wall it lies half way from where the arcs meet to the wall; among discs
 * alone it is the one that is farthest from all of them.
 *
 * @param rings the cusp, of which the first ring is its outline
 * @param discs centres of the discs that it borders on, mm
 */
export function deepestInCusp(
  rings: ArcRings,
  outline: Rings,
  discs: readonly Point[],
  radiusMm: number,
): Deepest {
  const { coords, bulges, ringEnds } = rings;
  const count = ringEnds[0];
  if (bulges.subarray(0, count).every((bulge) => bulge !== 0)) {
    return farthestFrom(discs, outline, radiusMm);
  }
  for (let i = 0; i < count; i++) {
    const before = (i + count - 1) % count;
    if (bulges[i] !== 0 && bulges[before] !== 0) {
      const foot = nearestOnWall(rings, count, coords[2 * i], coords[2 * i + 1]);
      return {
        atMm: [(coords[2 * i] + foot[0]) / 2, (coords[2 * i + 1] + foot[1]) / 2],
        offMm: Math.hypot(coords[2 * i] - foot[0], coords[2 * i + 1] - foot[1]),
      };
    }
  }
  return { atMm: [outline.coords[0], outline.coords[1]], offMm: 0 };
}

/**
 * The point within the outline that is farthest from the nearest disc: as far from three of them as from none else. Those are the middles of
 * the circles around Delaunay's triangles, of which the farthest are tried first: O(m log m) for m discs, and for each that lies outside,
 * as one between discs that do not touch, a look along the outline.
 */
function farthestFrom(discs: readonly Point[], outline: Rings, radiusMm: number): Deepest {
  const near = new NearCentres(
    discs.map(([x]) => x),
    discs.map(([, y]) => y),
  );
  const middles = middlesOf(discs)
    .map((atMm) => ({ atMm, offMm: near.distance(near.nearest(...atMm), ...atMm) - radiusMm }))
    .filter(({ offMm }) => offMm > 0)
    .sort((a, b) => b.offMm - a.offMm);
  const within = new WithinRing(outline);
  return (
    middles.find(({ atMm }) => within.holds(atMm)) ?? {
      atMm: [outline.coords[0], outline.coords[1]],
      offMm: 0,
    }
  );
}

/** The places that are as near to three discs as to any. */
function middlesOf(discs: readonly Point[]): Point[] {
  const { triangles } = Delaunator.from(discs.map(([x, y]) => [x - discs[0][0], y - discs[0][1]]));
  const middles: Point[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [...triangles.subarray(t, t + 3)].sort((p, q) => p - q);
    const middle = circumcentre(discs[a], discs[b], discs[c]);
    if (Number.isFinite(middle[0]) && Number.isFinite(middle[1])) {
      middles.push(middle);
    }
  }
  return middles;
}

function circumcentre([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): Point {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - ax, cy - ay];
  const [u, v] = [ux * ux + uy * uy, vx * vx + vy * vy];
  const twice = 2 * (ux * vy - uy * vx);
  return [ax + (vy * u - uy * v) / twice, ay + (ux * v - vx * u) / twice];
}

/** The first ring of an outline, whose sides are found by place. */
class WithinRing {
  readonly #coords: ArrayLike<number>;
  readonly #count: number;
  readonly #sides: BoxIndex;

  constructor({ coords, ringEnds }: Rings) {
    this.#coords = coords;
    this.#count = ringEnds[0];
    const boxes = new Float64Array(4 * this.#count);
    for (let i = 0, j = this.#count - 1; i < this.#count; j = i++) {
      const [ax, ay, bx, by] = [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]];
      boxes.set([Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)], 4 * i);
    }
    this.#sides = new BoxIndex(boxes);
  }

  /** Whether a point lies within, by the parity of crossings to its right. */
  holds([px, py]: Point): boolean {
    const coords = this.#coords;
    let inside = false;
    this.#sides.someIn(px, py, Infinity, py, (i) => {
      const j = (i === 0 ? this.#count : i) - 1;
      const [ax, ay, bx, by] = [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]];
      if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) {
        inside = !inside;
      }
      return false;
    });
    return inside;
  }
}

function nearestOnWall(rings: ArcRings, count: number, px: number, py: number): Point {
  const { coords, bulges } = rings;
  let best: Point = [coords[0], coords[1]];
  let least = Infinity;
  for (let i = 0; i < count; i++) {
    if (bulges[i] !== 0) {
      continue;
    }
    const j = (i + 1) % count;
    const dx = coords[2 * j] - coords[2 * i];
    const dy = coords[2 * j + 1] - coords[2 * i + 1];
    const along = (px - coords[2 * i]) * dx + (py - coords[2 * i + 1]) * dy;
    const t = Math.min(1, Math.max(0, along / (dx * dx + dy * dy)));
    const x = coords[2 * i] + t * dx;
    const y = coords[2 * i + 1] + t * dy;
    const d = Math.hypot(px - x, py - y);
    if (d < least) {
      least = d;
      best = [x, y];
    }
  }
  return best;
}
