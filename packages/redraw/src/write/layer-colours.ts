import { aciColour } from '@pourproof/plane';

/** Colour index 7 is black on paper and white on a dark screen. */
const BLACK = 7;

/**
 * The colour index of DXF for each paint, `#rrggbb`: that whose colour is nearest, and never the same one for two paints, so that they stay apart
 * when the file is read. Release 2000 has no other colours.
 */
export function layerColours(paints: readonly string[]): readonly number[] {
  const taken = new Map<string, number>();
  for (const paint of paints) {
    if (!taken.has(paint)) {
      taken.set(paint, nearest(paint, new Set(taken.values())));
    }
  }
  return paints.map((paint) => taken.get(paint) ?? BLACK);
}

function nearest(paint: string, taken: ReadonlySet<number>): number {
  let best = BLACK;
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index <= 255; index++) {
    const off = distance(aciColour(index), paint);
    if (!taken.has(index) && off < least) {
      least = off;
      best = index;
    }
  }
  return best;
}

function distance(a: string, b: string): number {
  return [1, 3, 5].reduce((sum, k) => sum + (channel(a, k) - channel(b, k)) ** 2, 0);
}

function channel(paint: string, at: number): number {
  return Number.parseInt(paint.slice(at, at + 2), 16);
}
