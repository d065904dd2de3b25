import * as z from 'zod';
import { mm, mm2, point } from './quantities.ts';

const least = z.number().meta({ description: 'Least that common practice leaves, mm' });

/** Part `board` of the report: the board as it was described, and the least wood that the cut leaves of it. */
export const boardPartSchema = z
  .object({
    sizeMm: z
      .tuple([z.number().positive(), z.number().positive()])
      .nullable()
      .meta({ description: 'Width and height of its face; null where only its thickness is known' }),
    thicknessMm: mm('Thickness'),
    marginMm: mm('Rim that the cut is to stay off'),
    middleMm: point.nullable().meta({
      description:
        'Where the middle of the artwork lies on it, from its left and top edge; null without sizes',
    }),
    turnDeg: z.number().meta({ description: 'Turn of the artwork on it, counter-clockwise' }),
    blocks: z
      .array(
        z.object({
          species: z.string().meta({ description: 'Name of the wood' }),
          part: z.enum(['heart', 'sap']).nullable(),
          grainDeg: z
            .number()
            .meta({ description: 'Fibres against the artwork’s x axis, counter-clockwise' }),
          diveDeg: z.number(),
          blocks: z.number().int().positive(),
          faceMm2: mm2('Their faces together').nullable(),
        }),
      )
      .meta({ description: 'All of its blocks, by wood and fibre direction; faces are null without sizes' }),
    keepClear: z.array(
      z.object({
        kind: z.enum(['hole', 'groove', 'clamp', 'hold-down']),
        outline: z.array(z.array(point)).meta({ description: 'Its outline in the artwork’s frame, mm' }),
        fromBackMm: mm('Depth from the back, where it does not go through').optional(),
      }),
    ),
    leastFloor: z.object({ woodMm: z.number(), leastMm: least }).nullable().meta({
      description:
        'Wood under the deepest place of the cut, negative where it goes through; null where nothing is cut',
    }),
    leastOverHole: z
      .object({ woodMm: mm('Wood'), leastMm: least, atMm: point })
      .nullable()
      .meta({ description: 'Least wood between the cut and a hole or groove in the back; null without one' }),
    leastRim: z
      .object({
        woodMm: z.number(),
        beside: z.enum(['edge', 'obstacle']),
        fromMm: point,
        toMm: point,
      })
      .nullable()
      .meta({
        description:
          'Least wood between the cut and an edge of the board, or a hole or groove beside it, negative where the cut leaves the board; null where nothing is cut or no sizes are known. What it should be depends on the grain and depth there: see `rim-too-thin`',
      }),
  })
  .meta({ description: 'Absent where neither a board nor a thickness was given' });
