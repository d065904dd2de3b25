import { type CleanRegion, packRings, ringArea } from '@pourproof/plane';

/** A region from rings that are simple and disjoint by construction: the first turned to be an outer ring, `holes` to be holes. */
export function cleanFrom(
  outers: readonly (readonly number[])[],
  holes: readonly (readonly number[])[] = [],
): CleanRegion {
  const turned = (ring: readonly number[], sign: 1 | -1): readonly number[] =>
    Math.sign(ringArea(ring)) === sign ? ring : reversed(ring);
  return packRings([...outers.map((r) => turned(r, 1)), ...holes.map((r) => turned(r, -1))]) as CleanRegion;
}

/** The ring walked the other way. */
export function reversed(ring: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) {
    out.push(ring[i], ring[i + 1]);
  }
  return out;
}

/** An axis-parallel rectangle. */
export function rectangle(x: number, y: number, width: number, height: number): number[] {
  return [x, y, x + width, y, x + width, y + height, x, y + height];
}

/** A regular polygon with its corners on a circle. */
export function regular(corners: number, radius: number, cx = 0, cy = 0, turn = 0): number[] {
  return Array.from({ length: corners }, (_, i) => (2 * Math.PI * i) / corners + turn).flatMap((t) => [
    cx + radius * Math.cos(t),
    cy + radius * Math.sin(t),
  ]);
}
