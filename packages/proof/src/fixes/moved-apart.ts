import { resolveRegions } from '@pourproof/arrangement';
import { type Drawing, type Point, packRings, type Rings, ringCoords } from '@pourproof/plane';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import { type Beside, besideWood, partsOf } from '../slivers/beside-wood.ts';
import { ownersOf, PartIndex } from '../slivers/part-index.ts';

/**
 * A drawing whose parts stand farther apart wherever a finding tells of thin wood between two of them: on the side with fewer of them,
 * the part beside the wood and all that lies beyond moves straight away from it.
 */
export function movedApart(drawing: Drawing, byMm: number, { where }: Finding): Drawing {
  const parts = new PartIndex(partsOf(resolveRegions(drawing.shapes.map(({ region }) => region)).region));
  const offsets = timesMm(waysApart(parts, where), byMm);
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

/**
 * Which way each part of a drawing moves when it is moved apart where wood between two of them is told of, and how far: as many times as
 * far as the wood is made wider.
 */
export function waysApart(parts: PartIndex, where: readonly FindingPlace[]): readonly Point[] {
  const middles = parts.boxes.map(
    ([left, top, right, bottom]): Point => [(left + right) / 2, (top + bottom) / 2],
  );
  const ways = middles.map((): Point => [0, 0]);
  const seen = new Set<string>();
  for (const { atMm, widthMm = 0 } of where) {
    const beside = besideWood(parts, { atMm, widthMm });
    const pair = beside === null ? '' : [beside.one, beside.other].toSorted((a, b) => a - b).join(' ');
    if (beside !== null && !seen.has(pair)) {
      seen.add(pair);
      const { moving, along } = side(beside, middles);
      for (const k of moving) {
        const [x, y] = ways[k] as Point;
        ways[k] = [x + along[0], y + along[1]];
      }
    }
  }
  return ways;
}

/** Ways as long as what is moved apart is made wider by. */
export function timesMm(ways: readonly Point[], byMm: number): readonly Point[] {
  return ways.map(([x, y]): Point => [byMm * x, byMm * y]);
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

/** Rings moved, each with the part that owns it. */
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
