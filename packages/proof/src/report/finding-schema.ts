import * as z from 'zod';
import { FINDING_CODES } from '../codes.ts';
import { fixSchema } from './fix-schema.ts';
import { amount, mm2, point, sized } from './quantities.ts';

/** What the place of a finding is a part of: of what is cut or lost, or of the wood that stays. */
export const PLACE_KINDS = [
  'stroke',
  'tip',
  'corner',
  'waist',
  'dot',
  'part',
  'wood',
  'island',
  'rim',
  'wall',
  'floor',
  'area',
  'contact',
  'gap',
  'crossing',
  'clamp',
  'block',
  'hole',
  'groove',
  'spot',
] as const;

const place = z.object({
  atMm: point,
  outline: z.array(z.array(point)).meta({ description: 'Rings or open lines that show the place, mm' }),
  what: z.enum(PLACE_KINDS).meta({ description: 'What kind of part this is' }),
  lengthMm: sized('Length of the part, mm').optional(),
  widthMm: sized('Width of the part, mm').optional(),
  areaMm2: mm2('Area of the part').optional(),
});

/** Part `findings` of the report, one of them. */
export const findingSchema = z.object({
  code: z.enum(FINDING_CODES),
  severity: z.enum(['stop', 'caution', 'note']),
  where: z.array(place).meta({ description: 'Places of the finding, the largest first' }),
  measured: amount,
  limit: amount,
  basis: z
    .enum(['prior', 'calibrated'])
    .optional()
    .meta({ description: 'What the colour travel of the finding rests on' }),
  bandFactor: z.number().optional().meta({
    description:
      'Of a wood without a prior of its own: factor by which the colour travel may lie off either way (95 %)',
  }),
  acrossGrain: z
    .boolean()
    .optional()
    .meta({ description: 'Of thin wood: whether the fibres run across it, which makes it short grain' }),
  openOutlines: z
    .object({
      count: z.number().int().positive(),
      cutMm2: mm2('Area that they bound and that is not cut'),
      woodMm2: mm2('Area that they bound and that is cut, though it was to stay wood'),
    })
    .optional()
    .meta({ description: 'Of outlines that are left out' }),
  round: z.number().int().positive().optional().meta({
    description:
      'Round of the work that it is found in, where there are several; absent where it holds for all',
  }),
  because: z.array(z.string()).min(1).meta({ description: 'Ids of docs/sources.md' }),
  fix: z.object({
    options: z.array(fixSchema).meta({ description: 'Ways out that hold, the best first' }),
    dropped: z
      .array(z.object({ fix: fixSchema, brings: z.array(z.enum(FINDING_CODES)) }))
      .optional()
      .meta({
        description:
          'Ways out that were tried and are not offered: with what each would bring, or nothing where it does not help',
      }),
    untried: z.array(fixSchema).optional().meta({
      description:
        'Ways out that the formulas propose and that are not offered, since one vetting proves no more changed jobs: each may bring worse',
    }),
  }),
  seenTo: z.boolean().optional().meta({
    description:
      'Whether the job says that it is seen to, which takes it out of the verdict; absent where that is no cure',
  }),
});

/** One finding of a report. */
export type Finding = z.infer<typeof findingSchema>;
/** A place of a finding. */
export type FindingPlace = z.infer<typeof place>;
/** What a place is a part of. */
export type PlaceKind = FindingPlace['what'];
/** A measured value or a limit with its quantity and unit. */
export type Amount = Finding['measured'];
/** How grave a finding is. */
export type Severity = Finding['severity'];
