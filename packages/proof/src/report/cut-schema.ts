import * as z from 'zod';
import { cutterSchema } from './cutter-schema.ts';
import { mm, mm2, mm3, sized } from './quantities.ts';

/** Part `cut` of the report. */
export const cutSchema = z.object({
  areaMm2: mm2('Cut region as seen from above'),
  leftStandingMm2: mm2('Artwork that no bit of the job reaches'),
  volumeMm3: mm3('Integral of depth over the cut'),
  floorAreaMm2: mm2('Floor'),
  wallAreaMm2: mm2('Walls'),
  wallLengthMm: mm('Length of wall, seen from above'),
  maxDepthMm: mm('Deepest point'),
  ridgedFloorMm2: mm2('Level floor that only the tip of a V goes over, which leaves it ridged').optional(),
  errorBound: z
    .object({
      areaMm2: mm2('Of the cut area, and of what is left standing'),
      volumeMm3: mm3('Of the volume'),
      floorAreaMm2: mm2('Of the floor'),
      wallAreaMm2: mm2('Of the walls; measured, not proven, but where a V with a point is the only bit'),
      wallLengthMm: sized('Of the length of wall, mm; measured, not proven'),
      maxDepthMm: sized('Of the deepest point, mm'),
      lengthNarrowerThanBitMm: sized(
        'Of the length of stroke narrower than the smallest bit, mm; measured, not proven',
      ),
    })
    .meta({
      description:
        'How far each figure may be, either way, from that of the curves as drawn, which stand as chords within the flattening tolerance. Straight walls are exact to rounding',
    }),
  onlyAsDrawnMm2: mm2(
    'Part of the cut in strokes and dots as wide as the bit to the flattening: no bit enters them if they were drawn narrower by less than that. The bounds leave it out',
  ).optional(),
  perCutter: z.array(
    z.object({
      cutter: cutterSchema,
      depthMm: mm('How deep it goes: to the depth of the job, or as far as its edge or its flanks reach'),
      areaMm2: mm2('What this cutter adds at the face to those before it'),
      volumeMm3: mm3('What it adds to their volume'),
      floorMm2: mm2('Level floor at the deepest that its flat bottom goes over and no bit before did'),
      places: z
        .number()
        .int()
        .nonnegative()
        .meta({ description: 'In how many separate places it adds area' }),
      outlineMm: mm('Length of the artwork’s outline that is reached now and was not before'),
      pathMm: mm('Length of its moves in the wood, over all passes'),
      passes: z.number().int().nonnegative(),
      retracts: z.number().int().nonnegative().meta({ description: 'How often it is lifted off the wood' }),
      minutes: z.number().nonnegative().meta({ description: 'How long it takes' }),
      isEstimated: z.literal(true).optional().meta({
        description: 'Path and time are estimated from area and outline: there is too much to plan',
      }),
    }),
  ),
  time: z
    .object({
      minutes: z.number().nonnegative(),
      changeMinutes: z.number().nonnegative().optional().meta({
        description:
          'Minutes to put in all bits that have something to do and to set them to the face, by the maker’s shop; absent where it does not say it of each',
      }),
      floorLeftOutMm2: mm2(
        'Level floor whose rounds are not in it: only the tip of a V could go over it',
      ).optional(),
      assumptions: z.array(
        z.object({
          name: z.enum([
            'feedMmPerMin',
            'plungeMmPerMin',
            'rapidMmPerMin',
            'accelerationMmPerS2',
            'retractMm',
            'junctionDeviationMm',
            'stepoverPct',
            'passToDiameterPct',
            'passDepthMm',
          ]),
          value: z.number(),
          unit: z.enum(['mm/min', 'mm/s²', 'mm', '%']),
          origin: z.enum(['given', 'shop', 'common practice']),
        }),
      ),
    })
    .meta({ description: 'Cutting and travelling of all bits; without changing them, and what it rests on' }),
});
