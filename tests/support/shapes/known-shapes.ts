import { resolveRegions } from '@pourproof/arrangement';
import { type CleanRegion, packRings, type Transform, transformRings } from '@pourproof/plane';

/** The clean region of plain rings, even-odd. */
export function regionOf(...rings: readonly (readonly number[])[]): CleanRegion {
  return resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region;
}

/** An upright box. */
export function box(x: number, y: number, width: number, height: number): number[] {
  return [x, y, x + width, y, x + width, y + height, x, y + height];
}

/** A regular polygon around the origin with a point on the x axis. */
export function regularPolygon(radius: number, sides: number): number[] {
  return Array.from({ length: sides }, (_, i) => (2 * Math.PI * i) / sides).flatMap((angle) => [
    radius * Math.cos(angle),
    radius * Math.sin(angle),
  ]);
}

/** A clean region moved by a transform and made clean again (a mirror turns its rings). */
export function moved(region: CleanRegion, transform: Transform): CleanRegion {
  return resolveRegions([{ ...transformRings(transform, region), fillRule: 'nonzero' }]).region;
}

/** The same region with its rings in reverse order and each ring begun elsewhere. */
export function reordered(region: CleanRegion): CleanRegion {
  const rings: number[][] = [];
  let from = 0;
  for (const to of region.ringEnds) {
    const ring = [...region.coords.subarray(2 * from, 2 * to)];
    const cut = 2 * Math.floor((to - from) / 2);
    rings.unshift([...ring.slice(cut), ...ring.slice(0, cut)]);
    from = to;
  }
  return packRings(rings) as CleanRegion;
}
