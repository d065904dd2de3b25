import {
  type CleanRegion,
  type Point,
  packRings,
  type Rings,
  ringArea,
  ringCoords,
  ringsBounds,
} from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';

/** Two parts with thin wood between. */
export interface Beside {
  /** Indices of both. */
  readonly one: number;
  readonly other: number;
  /** From the nearest edge of one to that of the other, mm. */
  readonly gapMm: Point;
}

/** What rounding and flattening add to half the width of wood, mm. */
const SLACK_MM = 0.05;

/**
 * The two parts that wood lies between; `null` where only one is as near as its width says, as within a letter.
 *
 * @param parts outlines of parts that may be moved each by itself
 */
export function besideWood(
  parts: readonly Rings[],
  { atMm, widthMm }: { readonly atMm: Point; readonly widthMm: number },
): Beside | null {
  const reach = widthMm / 2 + SLACK_MM;
  const near = parts
    .flatMap((part, index) => {
      const at = isNear(part, atMm, reach) ? nearestOn(part, atMm) : null;
      return at !== null && distance(at, atMm) <= reach ? [{ index, at }] : [];
    })
    .toSorted((a, b) => distance(a.at, atMm) - distance(b.at, atMm));
  const [one, other] = near;
  return one === undefined || other === undefined
    ? null
    : { one: one.index, other: other.index, gapMm: [other.at[0] - one.at[0], other.at[1] - one.at[1]] };
}

/** The connected parts of a region, each with its holes. */
export function partsOf(region: CleanRegion): readonly CleanRegion[] {
  const rings = Array.from(region.ringEnds, (_, k) => ringCoords(region, k));
  const outers = rings.filter((ring) => ringArea(ring) > 0);
  const parts = outers.map((outer) => [outer]);
  for (const hole of rings.filter((ring) => ringArea(ring) <= 0)) {
    const [x = 0, y = 0] = hole;
    const around = outers
      .map((outer, k) => ({ k, areaMm2: ringArea(outer), outer }))
      .filter(({ outer }) => isInside(packRings([outer]), x, y))
      .toSorted((a, b) => a.areaMm2 - b.areaMm2)[0];
    parts[around?.k ?? 0]?.push(hole);
  }
  // one outline of a clean region with its holes is clean
  return parts.map((part) => packRings(part) as CleanRegion);
}

function isNear(part: Rings, [x, y]: Point, reach: number): boolean {
  const [left, top, right, bottom] = ringsBounds(part);
  return x >= left - reach && x <= right + reach && y >= top - reach && y <= bottom + reach;
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
