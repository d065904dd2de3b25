import * as z from 'zod';

const amount = (what: string): z.ZodNumber => z.number().nonnegative().meta({ description: what });

const layers = z
  .object({ count: z.number().int().nonnegative(), eachMm: amount('Depth of one layer, mm') })
  .meta({ description: 'Fewest equal layers within the resin’s deepest pour, overpour included' });

const cups = z
  .object({
    count: z.number().int().positive(),
    partAG: amount('Part A of one cup, g'),
    partBG: amount('Part B of one cup, g'),
    pigmentG: amount('Pigment of one cup, g'),
    totalG: amount('All of one cup, g: exactly the sum of its parts'),
    runningG: z.array(z.number()).meta({
      description: 'What the scale shows after A, B and pigment when only the empty cup was set to zero, g',
    }),
    workingMinutes: amount('Minutes that a cup stays workable at the shop’s temperature'),
    fillingMinutes: amount('Minutes that filling all pockets takes, estimated'),
    pocketsAtMost: amount('Pockets that one cup fills before it thickens'),
    isHurried: z.boolean().meta({
      description: 'More cups would fit the working time, but each would be too small to weigh',
    }),
  })
  .meta({ description: 'All cups of a colour are equal, in whole steps of the scale' });

const colour = z.object({
  name: z
    .string()
    .meta({ description: 'Paint as `#rrggbb` or layer of the drawing; `all` of a drawing of one colour' }),
  resin: z
    .string()
    .optional()
    .meta({ description: 'Id of the resin colour or `#rrggbb`, where it is known' }),
  volumeMl: amount('Volume to mix, waste included, ml'),
  wasteMl: amount('Part of it that stays in cup and stick, ml'),
  massG: amount('Mixed resin to weigh, without pigment, g: exactly part A and part B'),
  partAG: amount('Part A, g'),
  partBG: amount('Part B, g'),
  pigmentG: amount('Pigment, g'),
  uncertaintyPct: amount('How far the fill may be off, waste apart, percent'),
  uncertainty: z.array(
    z.object({
      cause: z.enum(['geometry', 'depth', 'seal-film', 'overpour', 'end-grain', 'shrinkage', 'density']),
      lessMl: amount('May take off, ml'),
      moreMl: amount('May add, ml'),
    }),
  ),
  assumed: z
    .array(z.enum(['densityA', 'densityB', 'densityMixed']))
    .meta({ description: 'Densities that are class defaults and not from a label' }),
  cups,
  layers,
  price: amount('In the maker’s money').optional(),
});

const step = z
  .object({
    step: z.enum([
      'carve',
      'clean',
      'seal-coat',
      'bond-window',
      'pour',
      'next-layer',
      'top-up',
      'level',
      'finish',
      'full-cure',
    ]),
    turn: z.number().int().nonnegative().meta({ description: '1, 2, … where a step is done several times' }),
    round: z
      .number()
      .int()
      .positive()
      .optional()
      .meta({ description: 'Round of the work, where there are several' }),
    earliestHours: amount('Hours from the start of carving'),
    latestHours: amount('End of the window, or what the most cautious rule gives, hours'),
    isWindow: z.boolean().meta({ description: 'Whether missing the end costs sanding' }),
    earliest: z.string().optional().meta({ description: 'Day and time on the shop’s clock' }),
    latest: z.string().optional(),
    because: z.array(z.string()).min(1),
  })
  .meta({ description: 'A step of the work; dates where the start is known' });

/** Part `pour` of the report. */
export const pourSchema = z.object({
  colours: z.array(colour),
  overpourMm: amount('Poured proud of the face, mm'),
  wastePct: amount('Share of the fill that is mixed on top, percent'),
  boards: z.number().int().positive().meta({ description: 'Equal boards that the masses are for' }),
  stepG: amount('Step of the scale that the masses are rounded to, g'),
  layers,
  smallestBatchG: amount(
    'Smallest batch that the scale can weigh accurately, adding up to a running total, g',
  ),
  smallestBatchZeroedG: amount('The same with the display set to zero between the parts, g'),
  smallestTrueBatchG: amount('Smallest mix that can be stirred true, however it is weighed, g'),
  schedule: z.array(step),
  price: amount('Of all colours, in the maker’s money').optional(),
});
