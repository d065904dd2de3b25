import * as z from 'zod';
import { cutterSchema } from './cutter-schema.ts';
import { gram, mm, mm2, mm3 } from './quantities.ts';

/** Part `rounds` of the report: what each round of carving and pouring does by itself. */
export const roundsSchema = z
  .array(
    z.object({
      round: z.number().int().positive(),
      colours: z.array(z.string()).meta({ description: 'Its colours, by the names of `pour.colours`' }),
      depthMm: mm('Depth of its pockets below the face as it then is'),
      cutters: z.array(cutterSchema).meta({ description: 'Its bits in the order of use' }),
      loweredMm: mm('What earlier levellings have taken off the face'),
      faceRangeMm: mm(
        'How much the face under its cut rises and falls when it is carved, 0 once levelling has made it flat; absent where no heights were read',
      ).optional(),
      levelledMm: mm('What its own levelling and later ones take off what is poured in it'),
      marginMm: mm('What can come off before its first part is gone; null where nothing is cut').nullable(),
      leftMm: mm('Depth of its colour that all levellings leave where they leave least').nullable(),
      cutAreaMm2: mm2('What its bits cut, as seen from above'),
      volumeMm3: mm3('What its bits remove'),
      resinMm3: mm3('The part of it that is cured resin of earlier rounds; the rest is wood'),
      massG: gram('Mixed resin of all its colours, without pigment, for all boards'),
      partAG: gram('Part A'),
      partBG: gram('Part B'),
      pigmentG: gram('Pigment'),
      minutes: z
        .number()
        .nonnegative()
        .meta({ description: 'Cutting and travelling of all bits, one board' }),
      beginsHours: z
        .object({ earliest: z.number().nonnegative(), latest: z.number().nonnegative() })
        .meta({ description: 'When it is carved, hours from the start' }),
      levelHours: z
        .object({ earliest: z.number().nonnegative(), latest: z.number().nonnegative() })
        .meta({ description: 'When it may be levelled, hours from the start' }),
      steps: z
        .array(z.number().int().nonnegative())
        .meta({ description: 'Its steps, as indices of `pour.schedule`' }),
    }),
  )
  .meta({ description: 'In the order of the work; absent where all is carved and poured at once' });
