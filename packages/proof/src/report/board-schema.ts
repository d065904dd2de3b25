import * as z from 'zod';
import { mm, mm2 } from './quantities.ts';

const woodPart = z
  .enum(['heart', 'sap'])
  .nullable()
  .meta({ description: 'Heartwood or sapwood, where the board says' });

/** Part `endGrain` of the report. */
export const endGrainSchema = z.object({
  grainDeg: z.number(),
  diveDeg: z.number(),
  wallExposedMm2: mm2('∫ |n·f| dA over walls'),
  floorExposedMm2: mm2('∫ |n·f| dA over floors'),
  wallFraction: z.number().meta({ description: 'Exposed over whole wall area, 0…1' }),
  byBlock: z
    .array(
      z.object({
        species: z.string().meta({ description: 'Name of the wood' }),
        part: woodPart,
        blocks: z.number().int().positive().meta({ description: 'Blocks of this kind that the cut meets' }),
        grainDeg: z.number().meta({ description: 'Fibres against the artwork’s x axis, counter-clockwise' }),
        diveDeg: z.number(),
        wallAreaMm2: mm2('Walls that stand in them, slanted as they are'),
        wallLengthMm: mm('Wall that stands in them, seen from above'),
        wallExposedMm2: mm2('∫ |n·f| dA over walls'),
        floorAreaMm2: mm2('Floor'),
        floorExposedMm2: mm2('∫ |n·f| dA over floors'),
      }),
    )
    .meta({ description: 'By wood and fibre direction; the sums are the totals' }),
});

/** Part `bleed` of the report. */
export const bleedSchema = z.object({
  basis: z.enum(['prior', 'calibrated']).meta({
    description: 'calibrated where coupons moved the prior of a block at least; each block says its own',
  }),
  coupons: z.number().int().nonnegative().meta({ description: 'Coupons that moved a prior' }),
  couponsUnused: z
    .array(z.object({ row: z.number().int().positive(), why: z.enum(['other-wood', 'one-other-board']) }))
    .meta({
      description:
        'Rows of coupons, from 1, that moved nothing: of a wood that the cut does not meet, or of a single other board, which says too little of the wood',
    }),
  blocks: z.array(
    z.object({
      species: z.string().meta({ description: 'Name of the wood' }),
      part: woodPart,
      basis: z.enum(['prior', 'calibrated']),
      coupons: z.number().int().nonnegative(),
      slots: z.number().int().nonnegative().meta({ description: 'Slots read on these coupons' }),
      spreadWithin: z.number().positive().meta({
        description:
          'Standard deviation of ln(travel) between streaks of one board, as the slots show it or, without slots, as it is taken',
      }),
      ownSlots: z
        .object({
          slots: z.number().int().positive(),
          bleeding: z.number().int().nonnegative(),
          chance: z.number(),
          chanceUpper95: z.number(),
        })
        .optional()
        .meta({
          description:
            'Slots of this board, seal and resin alone: how many show a streak, and the chance that the next one does by these counts alone, 0…1',
        }),
      grainDeg: z.number(),
      travelMm: z
        .object({ median: z.number(), low: z.number(), high: z.number() })
        .meta({ description: 'Colour travel along the fibres from a wall across the grain, mm' }),
      bounds: z
        .object({
          viscosityMm: z.object({ value: z.number(), low: z.number(), high: z.number() }).meta({
            description: 'Until a thin layer of the resin sets, in an open vessel; band by its gel time',
          }),
          trappedAirMm: z
            .number()
            .nullable()
            .meta({ description: 'Until trapped air pushes back; null where vessels run through' }),
          governs: z.enum(['viscosity', 'trapped-air']),
          byViscosity: z.number().meta({
            description: 'How many times as far as coating resin at 25 °C it would run by viscosity alone',
          }),
        })
        .meta({ description: 'Upper bounds on the length of a streak in this wood: inference, no lengths' }),
      visibleProbability: z.number().meta({
        description: 'That a streak is longer than is seen, whatever its colour, 0…1',
      }),
      streak: z
        .object({
          deltaE00: z.number().meta({ description: 'CIEDE2000 of tinted wood against the wood' }),
          index: z
            .number()
            .meta({ description: 'Rank of bleed from length and colour at a wall across the grain, 0…1' }),
        })
        .optional()
        .meta({
          description: 'Of the colour that shows most, where the colours of wood and resin are known',
        }),
      streaks: z
        .array(
          z.object({
            colour: z.string().meta({ description: 'Name of the colour, as in `pour.colours`' }),
            deltaE00: z.number(),
            index: z.number(),
          }),
        )
        .optional()
        .meta({ description: 'The same for each colour of a drawing of several' }),
      areaMm2: mm2('Face that colour may reach at the median travel'),
      areaLowMm2: mm2('The same at the low end of the band'),
      areaHighMm2: mm2('The same at the high end of the band'),
    }),
  ),
});
