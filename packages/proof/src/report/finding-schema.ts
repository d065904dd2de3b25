import * as z from 'zod';
import { FINDING_CODES } from '../codes.ts';
import { fixSchema } from './fix-schema.ts';
import { amount, point } from './quantities.ts';

const place = z.object({
  atMm: point,
  outline: z.array(z.array(point)).meta({ description: 'Rings or open lines that show the place, mm' }),
});

/** Part `findings` of the report, one of them. */
export const findingSchema = z.object({
  code: z.enum(FINDING_CODES),
  severity: z.enum(['stop', 'caution', 'note']),
  where: z.array(place),
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
  because: z.array(z.string()).min(1).meta({ description: 'Ids of docs/sources.md' }),
  fix: z.object({ options: z.array(fixSchema) }),
  seenTo: z.boolean().optional().meta({
    description:
      'Whether the job says that it is seen to, which takes it out of the verdict; absent where that is no cure',
  }),
});

/** One finding of a report. */
export type Finding = z.infer<typeof findingSchema>;
/** A place of a finding. */
export type FindingPlace = z.infer<typeof place>;
/** A measured value or a limit with its quantity and unit. */
export type Amount = Finding['measured'];
/** How grave a finding is. */
export type Severity = Finding['severity'];
