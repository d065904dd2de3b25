import { resolveRegions } from '@pourproof/arrangement';
import {
  type CleanRegion,
  type Drawing,
  type Point,
  packRings,
  type Region,
  ringCoords,
  ringsBounds,
} from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';
import type { Finding } from '../report/finding-schema.ts';
import { type Beside, besideWood, nearestOn, partsOf } from '../slivers/beside-wood.ts';

/**
 * A drawing whose parts stand farther apart wherever a finding tells of thin wood between two of them: on the side with fewer of them,
 * the part beside the wood and all that lies beyond moves straight away from it.
 */
export function movedApart(drawing: Drawing, byMm: number, { where }: Finding): Drawing {
  const parts = partsOf(resolveRegions(drawing.shapes.map(({ region }) => region)).region);
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
  return {
    ...drawing,
    shapes: drawing.shapes.map((shape) => ({ ...shape, region: shifted(shape.region, parts, offsets) })),
  };
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

function middleOf(part: CleanRegion): Point {
  const [left, top, right, bottom] = ringsBounds(part);
  return [(left + right) / 2, (top + bottom) / 2];
}

/** Each ring moves with the part that it draws. */
function shifted(region: Region, parts: readonly CleanRegion[], offsets: readonly Point[]): Region {
  const rings = Array.from(region.ringEnds, (_, k) => {
    const ring = ringCoords(region, k);
    const [dx, dy] = offsets[partOf([ring[0] ?? 0, ring[1] ?? 0], parts)] ?? [0, 0];
    return ring.map((value, i) => value + (i % 2 === 0 ? dx : dy));
  });
  return { ...packRings(rings), fillRule: region.fillRule };
}

function partOf([x, y]: Point, parts: readonly CleanRegion[]): number {
  const within = parts.findIndex((part) => isInside(part, x, y));
  if (within >= 0) {
    return within;
  }
  const off = parts.map((part) => {
    const [u, v] = nearestOn(part, [x, y]) ?? [Infinity, Infinity];
    return Math.hypot(u - x, v - y);
  });
  return off.indexOf(Math.min(...off));
}
