import { SETTING_KEYS } from '@pourproof/job';
import * as z from 'zod';
import { artworkSchema } from './artwork-schema.ts';
import { boardPartSchema } from './board-part-schema.ts';
import { bleedSchema, endGrainSchema } from './board-schema.ts';
import { cutSchema } from './cut-schema.ts';
import { findingSchema } from './finding-schema.ts';
import { levellingSchema, sealSchema } from './levelling-schema.ts';
import { pourSchema } from './pour-schema.ts';
import { roundsSchema } from './rounds-schema.ts';
import { sliversSchema, strokesSchema } from './stroke-schema.ts';

/**
 * The report contract `pourproof/report@2`: the one source of its TypeScript type and of its published JSON
 * Schema.
 */
export const reportSchema = z.object({
  schema: z.literal('pourproof/report@2'),
  frame: z.literal('artwork').meta({
    description:
      'The frame of every coordinate of the report: that of the artwork as read, in mm, x to the right, y down',
  }),
  rulerOffsetMm: z.tuple([z.number(), z.number()]).readonly().meta({
    description:
      'Where the left and top edges of the artwork lie in this frame, mm. Less this, a coordinate is what a ruler laid on those edges reads, as in the printed answer',
  }),
  artwork: artworkSchema,
  cut: cutSchema,
  strokes: strokesSchema,
  slivers: sliversSchema,
  board: boardPartSchema.optional(),
  endGrain: endGrainSchema,
  bleed: bleedSchema,
  seal: sealSchema,
  levelling: levellingSchema,
  pour: pourSchema,
  rounds: roundsSchema.optional(),
  findings: z.array(findingSchema),
  defaults: z
    .array(z.enum(SETTING_KEYS))
    .meta({ description: 'Job values that were not given and are defaults of the program' }),
  fromShop: z.array(z.enum(SETTING_KEYS)).optional().meta({
    description: 'Job values that were not given and are those of the maker’s shop; absent without a shop',
  }),
  materialDefaults: z.array(z.string()).meta({
    description:
      'Values of wood, seal, resin and scale that are defaults and not the maker’s own, as wood.lab',
  }),
  verdict: z.enum(['clear', 'caution', 'stop']),
});

/** What a vetted drawing is found to be, as data. */
export type Report = z.infer<typeof reportSchema>;
