import { z } from 'zod';

/** Rows that a file may hold (our choice: more than a shop cuts in years). */
const MOST_ROWS = 200;
const MOST_SLOTS = 60;

/**
 * One coupon as the maker writes it. What is left out is as in the job, so that a coupon of the board at hand needs its slots only.
 */
export const couponRowSchema = z.strictObject({
  board: z.string().min(1).optional().meta({
    description: 'Name of the board that it was cut from; left out, it is the board of the job',
  }),
  wood: z.string().optional().meta({ description: 'Its wood: an id of the tables or of materials.json' }),
  part: z
    .enum(['heart', 'sap'])
    .optional()
    .meta({ description: 'Heartwood or sapwood, where that is known' }),
  seal: z.string().optional().meta({ description: 'Its seal: an id of the tables or of materials.json' }),
  coats: z.number().int().min(0).max(10).optional(),
  sealHours: z
    .string()
    .optional()
    .meta({ description: 'Time from the last coat to the pour; a time with its unit, such as "24h"' }),
  resin: z.string().optional().meta({ description: 'Its resin: an id of the tables or of materials.json' }),
  temp: z.string().optional().meta({
    description:
      'Temperature of shop and resin when it was poured; a temperature with its unit, such as "21C"',
  }),
  slots: z.array(z.string()).min(1).max(MOST_SLOTS).meta({
    description:
      'What each slot across the grain shows after flush sanding: the longest streak, such as "1.2mm"; "none below 0.45mm"; or clean, slight, moderate or severe',
  }),
});

/** A coupon as it stands in a file. */
export type CouponRow = z.infer<typeof couponRowSchema>;

/** Coupons as they stand in a job or a file of their own. */
export const couponRowsSchema = z.array(couponRowSchema).max(MOST_ROWS);
