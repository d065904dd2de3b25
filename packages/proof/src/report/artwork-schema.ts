import * as z from 'zod';
import { mm, mm2, point } from './quantities.ts';

const notice = z
  .object({
    code: z.string(),
    params: z
      .record(z.string(), z.union([z.string(), z.number(), z.array(z.union([z.string(), z.number()]))]))
      .optional()
      .meta({
        description: 'What the text is made of: counts, names, and measures whose names bear their unit',
      }),
    text: z.string().meta({ description: 'What, and what to do; lengths in the unit of the job' }),
    severity: z.enum(['caution', 'note']),
    effect: z.enum(['left-out', 'assumed', 'changed']).optional().meta({
      description:
        'Where the artwork is not the drawing as drawn: something drawn is not in it, its size was guessed, or something is in it otherwise',
    }),
    seenTo: z.boolean().optional().meta({
      description:
        'Whether the maker has seen to this caution, so that it does not count; absent where it is a note',
    }),
    where: z.array(
      z.object({
        atMm: point.optional(),
        line: z.number().int().optional(),
        column: z.number().int().optional(),
        element: z.string().optional(),
        setting: z.string().optional().meta({ description: 'Key of the setting that it is about' }),
        gapMm: mm('Gap that is open or was closed').optional(),
      }),
    ),
  })
  .meta({ description: 'What the reader skipped, closed, merged, scaled or assumed' });

/** Part `artwork` of the report. */
export const artworkSchema = z.object({
  file: z.string().meta({ description: 'File name, or the text that was set' }),
  format: z.enum(['svg', 'dxf', 'lettering']),
  scaleSource: z.string().meta({ description: 'How file units became mm; lengths in the unit of the job' }),
  areaMm2: mm2('Area covered by everything painted'),
  perimeterMm: mm('Length of its outline'),
  boundsMm: z.tuple([z.number(), z.number(), z.number(), z.number()]).readonly(),
  regions: z.number().int().nonnegative().meta({ description: 'Separate painted regions after union' }),
  holes: z.number().int().nonnegative(),
  layers: z.array(
    z.object({ name: z.string(), colour: z.string(), areaMm2: mm2('Area of this layer alone') }),
  ),
  notices: z.array(notice),
});
