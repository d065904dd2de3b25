import { type Bounds, MM_PER_INCH } from '@pourproof/plane';

/** A kind of paper. */
export type Paper = 'a4' | 'letter';

/** Sizes of paper, mm, upright: ISO 216, and 8.5 by 11 inches. */
export const PAPER_MM: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  a4: [210, 297],
  letter: [8.5 * MM_PER_INCH, 11 * MM_PER_INCH],
};

/** Edges of the paper that stay free, mm: most printers reach nearer (common practice); the foot has the bar and the numbers. */
export const MARGIN_MM = 10;
export const FOOT_MM = 26;
/** Neighbouring sheets show this much alike, mm (our choice). */
export const OVERLAP_MM = 12;

/** One sheet of a tiled drawing. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  /** What of the drawing it shows. */
  readonly boundsMm: Bounds;
}

/** A drawing cut into sheets, row by row. */
export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
  /** Middles of the strips that neighbouring sheets share. */
  readonly jointsX: readonly number[];
  readonly jointsY: readonly number[];
}

/** Cuts a drawing in real size into sheets that overlap; the drawing lies in the middle of them. */
export function paperTiles([left, top, right, bottom]: Bounds, paper: Paper): Tiling {
  const [width, height] = PAPER_MM[paper];
  const across = slices([left, right], width - 2 * MARGIN_MM);
  const down = slices([top, bottom], height - 2 * MARGIN_MM - FOOT_MM);
  return {
    columns: across.length,
    rows: down.length,
    tiles: down.flatMap(([y0, y1], row) =>
      across.map(([x0, x1], column): Tile => ({ column, row, boundsMm: [x0, y0, x1, y1] })),
    ),
    jointsX: across.slice(1).map(([x0]) => x0 + OVERLAP_MM / 2),
    jointsY: down.slice(1).map(([y0]) => y0 + OVERLAP_MM / 2),
  };
}

function slices(
  [from, to]: readonly [number, number],
  length: number,
): readonly (readonly [number, number])[] {
  const step = length - OVERLAP_MM;
  const count = Math.max(1, Math.ceil((to - from - OVERLAP_MM) / step));
  const spare = (count * step + OVERLAP_MM - (to - from)) / 2;
  return Array.from({ length: count }, (_, k) => [from - spare + k * step, from - spare + k * step + length]);
}
