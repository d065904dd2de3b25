import { type Bounds, BoxIndex, type Point, type Rings, ringCoords, ringsBounds } from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';

/** Parts that may be moved each by itself, sought by their boxes. */
export class PartIndex {
  readonly parts: readonly Rings[];
  readonly boxes: readonly Bounds[];
  readonly #index: BoxIndex;

  /** @param parts outlines of each, with its holes */
  constructor(parts: readonly Rings[]) {
    this.parts = parts;
    this.boxes = parts.map(ringsBounds);
    this.#index = new BoxIndex(Float64Array.from(this.boxes.flat()));
  }

  /** The part that a point lies in, the first of several, or the nearest; 0 where there is none. */
  at([x, y]: Point): number {
    const around: number[] = [];
    this.#index.someIn(x, y, x, y, (k) => {
      if (isInside(this.parts[k] as Rings, x, y)) {
        around.push(k);
      }
      return false;
    });
    if (around.length > 0) {
      return Math.min(...around);
    }
    let [nearest, least] = [0, Infinity];
    this.#index.visitNear(
      x,
      y,
      // no part is nearer than its box
      (off) => off <= least,
      (k) => {
        const [u, v] = nearestOn(this.parts[k] as Rings, [x, y]) ?? [Infinity, Infinity];
        const off = Math.hypot(u - x, v - y);
        if (off < least || (off === least && k < nearest)) {
          [nearest, least] = [k, off];
        }
      },
    );
    return nearest;
  }

  /** The parts whose boxes are as near to a point, in their order. */
  near([x, y]: Point, reach: number): readonly number[] {
    const found: number[] = [];
    this.#index.someIn(x - reach, y - reach, x + reach, y + reach, (k) => {
      found.push(k);
      return false;
    });
    return found.sort((a, b) => a - b);
  }
}

/** The part that each ring belongs to, by its first point. */
export function ownersOf(rings: Rings, parts: PartIndex): readonly number[] {
  return Array.from(rings.ringEnds, (_, k) => {
    const [x = 0, y = 0] = ringCoords(rings, k);
    return parts.at([x, y]);
  });
}

/** The point of the outlines of a part that is nearest to another; `null` for none. */
export function nearestOn(part: Rings, to: Point): Point | null {
  let nearest: Point | null = null;
  for (let k = 0; k < part.ringEnds.length; k++) {
    const ring = ringCoords(part, k);
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const at = nearestBetween(
        [ring[i] as number, ring[i + 1] as number],
        [ring[j] as number, ring[j + 1] as number],
        to,
      );
      if (nearest === null || distance(at, to) < distance(nearest, to)) {
        nearest = at;
      }
    }
  }
  return nearest;
}

function nearestBetween([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): Point {
  const [dx, dy] = [bx - ax, by - ay];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared));
  return [ax + t * dx, ay + t * dy];
}

function distance([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}
