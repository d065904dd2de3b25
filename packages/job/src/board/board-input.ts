import type { Point } from '@pourproof/plane';
import * as z from 'zod/mini';
import type { HeightReading } from './height-reading.ts';
import type { Obstacle } from './obstacle.ts';

/** Patterns that a board can be glued up in. */
export const BOARD_PATTERNS = [
  'plain',
  'stripes',
  'checkerboard',
  'alternating-checkerboard',
  'end-grain-checkerboard',
  'brick',
  'polygons',
] as const;

/** A pattern that a board can be glued up in. */
export type BoardPattern = (typeof BOARD_PATTERNS)[number];

/** A wood of a pattern; its width where it is a stripe, mm. */
export interface BoardWood {
  readonly wood: string;
  readonly part?: 'heart' | 'sap' | null | undefined;
  readonly widthMm?: number | undefined;
}

/** A glue-up by its pattern; lengths in mm. `polygons` has no woods: its blocks are given one by one. */
export interface BoardStructure {
  readonly pattern: BoardPattern;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thicknessMm: number;
  readonly woods?: readonly BoardWood[] | undefined;
  /** Side of a square of a checkerboard. */
  readonly squareMm?: number | undefined;
  /** Length of a brick. */
  readonly lengthMm?: number | undefined;
  /** Height of a row of bricks. */
  readonly rowMm?: number | undefined;
}

/** One block of a board of any polygons; angles in degrees, corners in mm in the frame of the board. */
export interface BlockStructure {
  readonly wood: string;
  readonly part?: 'heart' | 'sap' | null | undefined;
  readonly grainDeg?: number | undefined;
  readonly diveDeg?: number | undefined;
  /** Corners, in order round the block. */
  readonly outlineMm: readonly Point[];
}

/** A glue-up in one line, such as `stripes 300x180x20mm maple:60mm walnut:20mm`, or as a structure. */
export type BoardInput = string | BoardStructure;
/** A block as typed, such as `walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm`, or as a structure. */
export type BlockInput = string | BlockStructure;
/** What the cut or the bit stays off, as typed, such as `hole 20mm,30mm 8mm` or `clamp 20mm,90mm 40x25mm`, or as a structure. */
export type ObstacleInput = string | Obstacle;
/** A place as typed, such as `150mm,90mm`, or as a structure in mm. */
export type PlaceInput = string | { readonly atMm: Point };
/** A height of the face as typed, such as `20mm,30mm 19.8mm`, or as a structure. */
export type ReadingInput = string | HeightReading;

/** How many heights tell the flatness of a board: the corners and the middle at least (our choice). */
export const READING_COUNT = { min: 5, max: 9 } as const;

const point = z.tuple([z.number(), z.number()]);
const part = z.optional(z.nullable(z.enum(['heart', 'sap'])));
const length = z.number().check(z.positive());

/** The schema of a {@link BoardInput}. */
export const boardSchema: z.ZodMiniType = z.union([
  z.string(),
  z.strictObject({
    pattern: z.enum(BOARD_PATTERNS),
    widthMm: length,
    heightMm: length,
    thicknessMm: length,
    woods: z.optional(z.array(z.strictObject({ wood: z.string(), part, widthMm: z.optional(length) }))),
    squareMm: z.optional(length),
    lengthMm: z.optional(length),
    rowMm: z.optional(length),
  }),
]);

/** The schema of a {@link BlockInput}. */
export const blockSchema: z.ZodMiniType = z.union([
  z.string(),
  z.strictObject({
    wood: z.string(),
    part,
    grainDeg: z.optional(z.number()),
    diveDeg: z.optional(z.number()),
    outlineMm: z.array(point).check(z.minLength(3)),
  }),
]);

/** The schema of an {@link ObstacleInput}. */
export const obstacleSchema: z.ZodMiniType = z.union([
  z.string(),
  z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('hole'),
      atMm: point,
      diameterMm: length,
      fromBackMm: z.optional(length),
    }),
    z.strictObject({
      kind: z.literal('groove'),
      fromMm: point,
      toMm: point,
      widthMm: length,
      fromBackMm: z.optional(length),
    }),
    z.strictObject({ kind: z.literal('clamp'), atMm: point, sizeMm: z.tuple([length, length]) }),
    z.strictObject({ kind: z.literal('hold-down'), atMm: point, diameterMm: length }),
  ]),
]);

/** The schema of a {@link PlaceInput}. */
export const placeSchema: z.ZodMiniType = z.union([z.string(), z.strictObject({ atMm: point })]);

/** The schema of a {@link ReadingInput}. */
export const readingSchema: z.ZodMiniType = z.union([
  z.string(),
  z.strictObject({ atMm: point, heightMm: z.number() }),
]);
