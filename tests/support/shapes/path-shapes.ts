import { type CleanRegion, ringCoords } from '@pourproof/plane';
import { gridCells, holedStars, one, stars, untangled } from '../../arbitraries.ts';
import { cleanFrom, rectangle, regular } from './clean-from.ts';

/** A ring of 24 and 17 corners. */
export const annulus: CleanRegion = cleanFrom([regular(24, 10)], [regular(17, 4)]);

/** Regions of many kinds, each with its name. */
export const pathShapes: readonly [string, CleanRegion][] = [
  ['rectangle', cleanFrom([rectangle(3, 4, 20, 6)])],
  ['triangle', cleanFrom([[0, 0, 12, 1, 3, 9]])],
  ['bar with a step', cleanFrom([[0, 0, 20, 0, 20, 4, 8, 4, 8, 12, 0, 12]])],
  ['annulus', annulus],
  ['two islands', cleanFrom([rectangle(0, 0, 5, 5), regular(7, 3, 12, 2)])],
  ['holed star', one(holedStars, 5)],
  ['spiky star', one(stars([60, 60], [2, 10]), 9)],
  ['grid cells', one(gridCells([12, 12], [0.6, 0.6]), 3)],
  ['tangle', one(untangled([60, 60]), 11)],
];

/** Distance from a point to the nearest boundary segment, by looking at all of them. */
export function boundaryDistance(region: CleanRegion, px: number, py: number): number {
  let least = Infinity;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const c = ringCoords(region, k);
    for (let i = 0; i < c.length; i += 2) {
      const j = (i + 2) % c.length;
      const dx = c[j]! - c[i]!;
      const dy = c[j + 1]! - c[i + 1]!;
      const dd = dx * dx + dy * dy;
      const t = dd > 0 ? ((px - c[i]!) * dx + (py - c[i + 1]!) * dy) / dd : 0;
      const s = Math.min(1, Math.max(0, t));
      least = Math.min(least, Math.hypot(px - c[i]! - s * dx, py - c[i + 1]! - s * dy));
    }
  }
  return least;
}
