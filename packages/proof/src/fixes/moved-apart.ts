import { resolveRegions } from '@pourproof/arrangement';
import { type Drawing, type Point, packRings, type Rings, ringCoords, ringsBounds } from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import { type Beside, besideWood, nearestOn, partsOf } from '../slivers/beside-wood.ts';

/**
 * A drawing whose parts stand farther apart wherever a finding tells of thin wood between two of them: on the side with fewer of them,
 * the part beside the wood and all that lies beyond moves straight away from it.
 */
export function movedApart(drawing: Drawing, byMm: number, { where }: Finding): Drawing {
  const parts = partsOf(resolveRegions(drawing.shapes.map(({ region }) => region)).region);
  const offsets = offsetsApart(parts, byMm, where);
  return {
    ...drawing,
    shapes: drawing.shapes.map((shape) => ({
      ...shape,
      region: {
        ...shiftedRings(shape.region, ownersOf(shape.region, parts), offsets),
        fillRule: shape.region.fillRule,
      },
    })),
  };
}

/** How far each part of a drawing moves, mm, when it is moved apart where wood between two of them is told of. */
export function offsetsApart(
  parts: readonly Rings[],
  byMm: number,
  where: readonly FindingPlace[],
): readonly Point[] {
  const middles = parts.map(middleOf);
  const offsets = parts.map((): Point => [0, 0]);
  const seen = new Set<string>();
  for (const { atMm, widthMm = 0 } of where) {
    const beside = besideWood(parts, { atMm, widthMm });
    const pair = beside === null ? '' : [beside.one, beside.other].toSorted((a, b) => a - b).join(' ');
    if (beside !== null && !seen.has(pair)) {
      seen.add(pair);
      const { moving, along } = side(beside, middles);
      for (const k of moving) {
        const [x, y] = offsets[k] as Point;
        offsets[k] = [x + byMm * along[0], y + byMm * along[1]];
      }
    }
  }
  return offsets;
}

/** The parts that give way on the side with fewer of them, and which way. */
function side(
  { one, other, gapMm: [gx, gy] }: Beside,
  middles: readonly Point[],
): { readonly moving: readonly number[]; readonly along: Point } {
  const length = Math.hypot(gx, gy) || 1;
  const along: Point = [gx / length, gy / length];
  const far = middles.map(([x, y]) => x * along[0] + y * along[1]);
  const indices = middles.map((_, k) => k);
  const beyond = indices.filter(
    (k) => k === other || (k !== one && (far[k] as number) >= (far[other] as number)),
  );
  const before = indices.filter(
    (k) => k === one || (k !== other && (far[k] as number) <= (far[one] as number)),
  );
  return beyond.length <= before.length
    ? { moving: beyond, along }
    : { moving: before, along: [-along[0], -along[1]] };
}

function middleOf(part: Rings): Point {
  const [left, top, right, bottom] = ringsBounds(part);
  return [(left + right) / 2, (top + bottom) / 2];
}

/** The part that each ring belongs to, by its first point. */
export function ownersOf(rings: Rings, parts: readonly Rings[]): readonly number[] {
  return Array.from(rings.ringEnds, (_, k) => {
    const [x = 0, y = 0] = ringCoords(rings, k);
    return partAt([x, y], parts);
  });
}

/** Rings moved, each with the part that owns it, see {@link ownersOf}. */
export function shiftedRings<Kind extends Rings>(
  rings: Kind,
  owners: readonly number[],
  offsets: readonly Point[],
): Kind {
  const moved = Array.from(rings.ringEnds, (_, k) => {
    const ring = ringCoords(rings, k);
    const [dx, dy] = offsets[owners[k] as number] ?? [0, 0];
    return ring.map((value, i) => value + (i % 2 === 0 ? dx : dy));
  });
  // what is moved apart stays as clean as it was
  return packRings(moved) as Rings as Kind;
}

/** The part that a point lies in, or the nearest. */
function partAt([x, y]: Point, parts: readonly Rings[]): number {
  const within = parts.findIndex((part) => isInside(part, x, y));
  if (within >= 0) {
    return within;
  }
  let [nearest, least] = [0, Infinity];
  parts.forEach((part, k) => {
    const [left, top, right, bottom] = ringsBounds(part);
    // no part is nearer than its box
    if (Math.hypot(Math.max(left - x, x - right, 0), Math.max(top - y, y - bottom, 0)) < least) {
      const [u, v] = nearestOn(part, [x, y]) ?? [Infinity, Infinity];
      const off = Math.hypot(u - x, v - y);
      [nearest, least] = off < least ? [k, off] : [nearest, least];
    }
  });
  return nearest;
}
