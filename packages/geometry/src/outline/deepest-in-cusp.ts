import type { Point, Rings } from '@pourproof/plane';
import type { ArcRings } from './arc-rings.ts';

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

/** The point within the outline that is farthest from the nearest disc: as far from three of them as from none else. */
function farthestFrom(discs: readonly Point[], outline: Rings, radiusMm: number): Deepest {
  let best: Deepest = { atMm: [outline.coords[0], outline.coords[1]], offMm: 0 };
  for (const [k, a] of discs.entries()) {
    for (const [l, b] of discs.slice(k + 1).entries()) {
      for (const c of discs.slice(k + l + 2)) {
        const atMm = circumcentre(a, b, c);
        const nearest = Math.min(...discs.map(([x, y]) => Math.hypot(atMm[0] - x, atMm[1] - y)));
        if (nearest - radiusMm > best.offMm && isWithin(outline, atMm)) {
          best = { atMm, offMm: nearest - radiusMm };
        }
      }
    }
  }
  return best;
}

function circumcentre([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): Point {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - ax, cy - ay];
  const [u, v] = [ux * ux + uy * uy, vx * vx + vy * vy];
  const twice = 2 * (ux * vy - uy * vx);
  return [ax + (vy * u - uy * v) / twice, ay + (ux * v - vx * u) / twice];
}

/** Whether a point lies within the first ring, by the parity of crossings to its right. */
function isWithin({ coords, ringEnds }: Rings, [px, py]: Point): boolean {
  let inside = false;
  for (let i = 0, j = ringEnds[0] - 1; i < ringEnds[0]; j = i++) {
    const [ax, ay, bx, by] = [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]];
    if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) {
      inside = !inside;
    }
  }
  return inside;
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
