import * as z from 'zod';
import { mm, point } from './quantities.ts';

/** Part `strokes` of the report. */
export const strokesSchema = z.object({
  narrowestMm: mm('Narrowest stroke, tapers left out; where all is taper, its greatest width').nullable(),
  narrowestAt: point.nullable(),
  narrowestToBit: z.number().nullable().meta({
    description: 'Narrowest stroke over the smallest bit’s diameter; null where a V shapes the walls',
  }),
  lengthMm: mm('Length of stroke, along its middle'),
  lengthNarrowerThanBitMm: mm('Length of stroke narrower than the smallest bit'),
  tapers: z
    .object({
      narrowestMm: mm('Smallest width of a taper'),
      narrowestAt: point,
      widestMm: mm('Greatest width of a taper'),
      lengthMm: mm('Length of tapers, along their middle'),
      lengthNarrowerThanBitMm: mm('Length of tapers narrower than the smallest bit'),
    })
    .nullable()
    .meta({
      description:
        'What narrows steadily to its end, which narrowestMm leaves out and lengthMm counts; null where nothing does',
    }),
  widthHistogram: z.array(
    z.object({ fromMm: mm('From'), toMm: mm('To'), lengthMm: mm('Length of stroke in this class') }),
  ),
});

/** Part `slivers` of the report: the wood between cuts. */
export const sliversSchema = z.object({
  narrowestMm: mm('Thinnest wood between cuts').nullable(),
  narrowestAt: point.nullable(),
  shortGrain: z.array(
    z.object({
      atMm: point,
      widthMm: mm('Thickness'),
      heightMm: mm('Height'),
      lengthMm: mm('Length'),
      angleDeg: z.number().meta({ description: 'Angle between its long axis and the fibres' }),
      limitMm: mm('Thickness that practice asks for'),
      isShortGrain: z.boolean().meta({ description: 'Whether the fibres run across it' }),
    }),
  ),
});
