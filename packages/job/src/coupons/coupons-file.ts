import { z } from 'zod';
import { JobError } from '../job-error.ts';
import { type CouponRow, couponRowsSchema } from './coupon-row.ts';
import { issueLines } from './issue-lines.ts';

/**
 * The file `pourproof/coupons@1`: test slots that the maker has cut and read. One such file can serve every job: each proof takes the rows
 * of its own woods.
 */
export const couponsFileSchema = z.strictObject({
  schema: z.literal('pourproof/coupons@1'),
  coupons: couponRowsSchema,
});

/**
 * The rows of a parsed file of coupons, as a job takes them.
 *
 * @param name file name for messages
 * @throws {JobError} naming every row that is wrong, counted from 1
 */
export function readCouponsFile(data: unknown, name: string): CouponRow[] {
  const result = couponsFileSchema.safeParse(data);
  if (result.success) {
    return result.data.coupons;
  }
  throw new JobError(
    `${name} is not a pourproof/coupons@1 file:\n${issueLines(result.error)}\nThe schema is in docs/schema/coupons@1.json.`,
  );
}
