import type { CouponRow, Job } from '@pourproof/job';
import type { FixStep } from '../report/fix-schema.ts';

/** What a row of coupons takes from its job where it leaves it out, and a way out may change. */
type TakenKey = 'seal' | 'coats' | 'sealHours' | 'resin' | 'temp';

/** What each kind of way out changes of that. */
const CHANGED: Readonly<Partial<Record<FixStep['do'], readonly TakenKey[]>>> = {
  'change-seal': ['seal', 'coats', 'sealHours'],
  'fewer-coats': ['coats'],
  wait: ['sealHours'],
  'pour-sooner': ['sealHours'],
  'use-resin': ['resin'],
  'change-temperature': ['temp'],
};

/**
 * Coupons were cut as the job was: rows that leave out what some ways out change get it written in. Rows that name it stay as they are.
 *
 * @returns the rows, and the numbers of those that change, from 1
 */
export function pinnedCoupons(
  rows: readonly CouponRow[],
  { seal, coats, sealHours, resin, shopTempC }: Job,
  steps: readonly FixStep[],
): { readonly rows: readonly CouponRow[]; readonly changed: readonly number[] } {
  const keys = new Set(steps.flatMap((step) => CHANGED[step.do] ?? []));
  const now = { seal, coats, sealHours: `${sealHours}h`, resin, temp: `${shopTempC}C` };
  const pinned = rows.map((row) => {
    const left = [...keys].filter((key) => row[key] === undefined);
    return left.length === 0 ? row : { ...row, ...Object.fromEntries(left.map((key) => [key, now[key]])) };
  });
  return { rows: pinned, changed: pinned.flatMap((row, k) => (row === rows[k] ? [] : [k + 1])) };
}
