import { type CleanRegion, type Point, packRings, type Rings, ringArea, ringCoords } from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';
import { nearestOn, PartIndex } from './part-index.ts';

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

/** The two parts that wood lies between; `null` where only one is as near as its width says, as within a letter. */
export function besideWood(
  parts: PartIndex,
  { atMm, widthMm }: { readonly atMm: Point; readonly widthMm: number },
): Beside | null {
  const reach = widthMm / 2 + SLACK_MM;
  const near = parts
    .near(atMm, reach)
    .flatMap((index) => {
      const at = nearestOn(parts.parts[index] as Rings, atMm);
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
  const index = new PartIndex(outers.map((outer) => packRings([outer])));
  for (const hole of rings.filter((ring) => ringArea(ring) <= 0)) {
    const [x = 0, y = 0] = hole;
    const around = index
      .near([x, y], 0)
      .filter((k) => isInside(index.parts[k] as Rings, x, y))
      .map((k) => ({ k, areaMm2: ringArea(outers[k] as Float64Array) }))
      .toSorted((a, b) => a.areaMm2 - b.areaMm2)[0];
    parts[around?.k ?? 0]?.push(hole);
  }
  // one outline of a clean region with its holes is clean
  return parts.map((part) => packRings(part) as CleanRegion);
}

function distance([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}
