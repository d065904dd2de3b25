import type { Point } from '@pourproof/plane';

/**
 * Crossings that are resolved in one drawing at most. Computed: with Node 20 each takes some 0.8 kB and 7 µs,
 * so that as many as this stay within 10 s and 1 GB (docs/decisions/0007). Lettering and ornaments have
 * thousands; a hundred times more come from shapes piled up, or from hatching that was meant to look like a
 * tone.
 *
 * @public
 */
export const MAX_CROSSINGS = 1_000_000;

/**
 * A drawing whose outlines cross too often to be resolved. `found` crossings had been found when resolving
 * stopped, which is early: how many more there are is not known.
 */
export class CrossingsError extends Error {
  readonly code = 'too-many-crossings';
  readonly found: number;
  readonly limit: number;
  /** The last crossing that was found, in mm; what lies far to the left of it has been looked at. */
  readonly atMm: Point;
  readonly what: string;
  readonly remedy: string;

  constructor(found: number, limit: number, atMm: Point) {
    const what = `Its outlines cross each other more than ${grouped(limit)} times: ${grouped(found)} crossings were found by x = ${atMm[0].toFixed(1)} mm.`;
    const remedy =
      'Join shapes that lie on top of each other in the drawing program, replace hatching by filled outlines, or divide the drawing into several files.';
    super(`${what} ${remedy}`);
    this.name = 'CrossingsError';
    this.found = found;
    this.limit = limit;
    this.atMm = atMm;
    this.what = what;
    this.remedy = remedy;
  }
}

function grouped(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/gu, ',');
}
