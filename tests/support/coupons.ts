import type { BleedJob } from '../../packages/materials/src/bleed-travel.ts';
import type { Coupon, CouponReading } from '../../packages/materials/src/calibration/coupon.ts';

/** Prior median 3 mm: black cherry without a seal. */
export const CHERRY: BleedJob = { wood: 'cherry', seal: 'none', coats: 0, sealHours: 0 };
export const streaks = (...lengths: number[]): CouponReading[] =>
  lengths.map((lengthMm) => ({ kind: 'streak', lengthMm }));
export const coupon = (
  row: number,
  readings: readonly CouponReading[],
  more: Partial<Coupon> = {},
): Coupon => ({
  row,
  board: null,
  made: CHERRY,
  readings,
  ...more,
});
export const otherBoard = (row: number, board: string, ...lengths: number[]): Coupon =>
  coupon(row, streaks(...lengths), { board });
