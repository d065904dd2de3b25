import * as z from 'zod';
import { gram, mm, point } from './quantities.ts';

/** Part `seal` of the report. */
export const sealSchema = z.object({
  filmMm: mm('Film on walls and floor'),
  massG: gram('Liquid sealer for walls and floors of one board'),
  ghostBelowMm: mm('Strokes narrower than this fill with clear seal alone').nullable(),
  ghostLengthMm: mm('Length of stroke that does'),
});

const count = z.number().int().nonnegative();

/** Part `levelling` of the report. */
export const levellingSchema = z.object({
  planMm: mm('What levelling takes off'),
  marginMm: mm('What can come off before the first part is gone; null where nothing is cut').nullable(),
  leftMm: mm('Depth of colour that the plan leaves where it leaves least').nullable(),
  leftWidthMm: mm(
    'Width at the face that the plan leaves of it: between sloping walls (V, ball, taper) it gets narrower',
  ).nullable(),
  firstLostAt: point.nullable(),
  lostLengthMm: mm('Length of stroke that the plan takes away'),
  strokesMm: z
    .object({
      lost: mm('all colour goes'),
      spoilt: mm('too narrow, or too shallow to hide the floor'),
      close: mm('the same under twice the plan'),
      holds: mm('safe'),
    })
    .meta({ description: 'Length of stroke that is cut, by what the plan does to it' }),
  areas: z
    .object({ lost: count, spoilt: count, close: count, holds: count })
    .meta({ description: 'Parts without a stroke (dots, squares, hearts), by what the plan does to them' }),
  uncutMm: mm('Length of stroke that no bit enters: it is never cut'),
  parts: z
    .array(
      z.object({
        atMm: point,
        marginMm: mm('What can come off before it is gone; null where no bit enters it').nullable(),
        grade: z.enum(['lost', 'spoilt', 'close', 'holds']).nullable(),
      }),
    )
    .meta({
      description: 'Every separate part by its own section, at the place where its colour goes first',
    }),
  flatness: z
    .object({
      rangeMm: mm('How much the face rises and falls under the cut'),
      lowestAt: point,
      highestAt: point,
      residualMm: mm('Largest distance of a reading from the fitted surface'),
      veeWidthMm: z
        .object({ narrowerBy: z.number().nonnegative(), widerBy: z.number().nonnegative() })
        .optional()
        .meta({
          description: 'Where a V bit is used: how much its strokes come out off their width at most, mm',
        }),
    })
    .optional()
    .meta({ description: 'Where the board was measured' }),
  method: z.enum(['planer', 'drum', 'hand', 'cutter']).meta({ description: 'How the face is levelled' }),
  methodMm: z
    .object({ low: z.number(), usual: z.number(), high: z.number() })
    .meta({ description: 'What this way of levelling usually takes off, mm' }),
});
