import type { CouponReading } from '@pourproof/materials';
import * as z from 'zod/mini';
import {
  type LengthInput,
  measureSchema,
  type TemperatureInput,
  type TimeInput,
} from '../values/measure-input.ts';

/** Rows that a file may hold (our choice: more than a shop cuts in years). */
const MAX_ROWS = 200;
/** Slots that a row may hold (our choice: more than a coupon has room for). */
const MAX_SLOTS = 60;

/** What one slot shows: as typed, such as `1.2mm`, or as a structure. */
export type SlotInput = string | CouponReading;

/**
 * One coupon as the maker writes it. What is left out is as in the job, so that a coupon of the board at hand
 * needs its slots only.
 */
export interface CouponRow {
  /** Name of the board that it was cut from; left out, it is the board of the job. */
  readonly board?: string | undefined;
  readonly wood?: string | undefined;
  readonly part?: 'heart' | 'sap' | undefined;
  readonly seal?: string | undefined;
  readonly coats?: number | undefined;
  /** Time from the last coat to the pour. */
  readonly sealHours?: TimeInput | undefined;
  readonly resin?: string | undefined;
  /** Temperature of shop and resin when it was poured. */
  readonly temp?: TemperatureInput | undefined;
  /** What the rule was read to; left out, the last digit that a length is typed to. */
  readonly rule?: LengthInput | undefined;
  /** What each slot across the grain shows after flush sanding. */
  readonly slots: readonly SlotInput[];
}

const slotSchema = z.union([
  z.string(),
  z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('streak'),
      lengthMm: z.number(),
      stepMm: z
        .optional(z.number().check(z.positive()))
        .check(z.meta({ description: 'What the rule was read to, mm' })),
    }),
    z.strictObject({ kind: z.literal('none-visible'), belowMm: z.number() }),
    z.strictObject({ kind: z.literal('between'), fromMm: z.number(), toMm: z.number() }),
    z.strictObject({ kind: z.literal('class'), class: z.enum(['clean', 'slight', 'moderate', 'severe']) }),
  ]),
]);

function told(schema: z.ZodMiniType, description: string): z.ZodMiniOptional {
  return z.optional(schema).check(z.meta({ description }));
}

const couponRowSchema = z.strictObject({
  board: told(
    z.string().check(z.minLength(1)),
    'Name of the board that it was cut from; left out, it is the board of the job',
  ),
  wood: told(z.string(), 'Its wood: an id of the tables or of materials.json'),
  part: told(z.enum(['heart', 'sap']), 'Heartwood or sapwood, where that is known'),
  seal: told(z.string(), 'Its seal: an id of the tables or of materials.json'),
  coats: z.optional(z.int().check(z.gte(0), z.lte(10))),
  sealHours: told(measureSchema('time'), 'Time from the last coat to the pour, such as "24h" or {"h": 24}'),
  resin: told(z.string(), 'Its resin: an id of the tables or of materials.json'),
  temp: told(
    measureSchema('temperature'),
    'Temperature of shop and resin when it was poured, such as "21C" or {"celsius": 21}',
  ),
  rule: told(
    measureSchema('length'),
    'What the rule was read to, such as "1mm"; left out, the last digit that a length is typed to',
  ),
  slots: z.array(slotSchema).check(
    z.minLength(1),
    z.maxLength(MAX_SLOTS),
    z.meta({
      description:
        'What each slot across the grain shows after flush sanding: the longest streak, such as "1.2mm"; "none below 0.45mm"; "between 1mm and 2mm"; or clean, slight, moderate or severe',
    }),
  ),
});

/** Coupons as they stand in a job or a file of their own. */
export const couponRowsSchema: z.ZodMiniType = z.array(couponRowSchema).check(z.maxLength(MAX_ROWS));
