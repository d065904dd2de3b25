import * as z from 'zod/mini';
import { refuseShape } from '../refusals/shape-issues.ts';
import { type CouponRow, couponRowsSchema } from './coupon-row.ts';

const SCHEMA = 'pourproof/coupons@1';

/**
 * The file `pourproof/coupons@1`: test slots that the maker has cut and read. One such file can serve every
 * job: each proof takes the rows of its own woods.
 */
export const couponsFileSchema = z.strictObject({
  schema: z.literal(SCHEMA),
  coupons: couponRowsSchema,
});

/**
 * The rows of a parsed file of coupons, as a job takes them.
 *
 * @param name file name for messages
 * @throws {JobError} naming every row that is wrong, counted from 1
 */
export function readCouponsFile(data: unknown, name: string): readonly CouponRow[] {
  const result = couponsFileSchema.safeParse(data, { reportInput: true });
  if (!result.success) {
    refuseShape(result.error, { file: name, schema: SCHEMA, keys: ['schema', 'coupons'], forms: {} });
  }
  return (data as { readonly coupons: readonly CouponRow[] }).coupons;
}
