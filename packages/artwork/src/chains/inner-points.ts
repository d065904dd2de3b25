import { boundsOf } from '@pourproof/plane';

type Ring = readonly number[];

/** Levels at which points within a ring are looked for, as shares of its height: off what is drawn at round shares. */
const LEVELS = [0.137, 0.311, 0.497, 0.683, 0.859];

/**
 * Points well within a ring by even-odd, at several heights: each in the middle of the widest stretch there. Fewer, or
 * none, for a ring without area.
 */
export function innerPoints(ring: Ring): readonly (readonly [x: number, y: number])[] {
  const [, top, , bottom] = boundsOf(ring);
  return LEVELS.flatMap((share) => {
    const y = top + share * (bottom - top);
    const xs = crossingsAt(ring, y).sort((a, b) => a - b);
    let best = -1;
    let widest = 0;
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const width = (xs[i + 1] as number) - (xs[i] as number);
      if (width > widest) {
        [best, widest] = [i, width];
      }
    }
    return best < 0 ? [] : [[((xs[best] as number) + (xs[best + 1] as number)) / 2, y] as const];
  });
}

/** Whether a point lies within a ring by even-odd. */
export function isInside(ring: Ring, x: number, y: number): boolean {
  return crossingsAt(ring, y).filter((at) => at > x).length % 2 === 1;
}

/** Where a level crosses a ring, in the order of its edges. */
function crossingsAt(ring: Ring, y: number): number[] {
  const xs: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const [ax, ay] = [ring[i] as number, ring[i + 1] as number];
    const [bx, by] = [ring[j] as number, ring[j + 1] as number];
    if (ay > y !== by > y) {
      xs.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
    }
  }
  return xs;
}
