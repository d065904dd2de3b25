import type { Job } from '@pourproof/job';
import { type CalibratedTravel, NORMAL_95_QUANTILE, spreadWithinBoard } from '@pourproof/materials';
import type { Fix } from '../report/fix-schema.ts';

/** Slots of a coupon: with fewer one streak decides, and 3 clean ones already say something (our choice). */
const SLOTS = 3;
/** Length of a slot across the grain, mm: it opens some dozens of vessels in any wood (our choice). */
const SLOT_MM = 30;

/** What is judged by the colour travel: the reach that is likely, and the limits that it is compared with, mm. */
export interface Reach {
  readonly reachMm: number;
  readonly limitsMm: readonly number[];
}

/**
 * The advice to cut a coupon before anything else: where a limit lies within what this board's median may be, so that the verdict could
 * as well be another. With coupons that leave no such doubt it is not offered.
 */
export function couponFirst(job: Job, travel: CalibratedTravel, { reachMm, limitsMm }: Reach): Fix[] {
  // streaks of one board differ too, but no coupon takes that away
  const doubt = Math.sqrt(Math.max(0, travel.spread ** 2 - spreadWithinBoard.value ** 2));
  const isOpen = limitsMm.some(
    (limitMm) => Math.abs(Math.log(limitMm / reachMm)) < NORMAL_95_QUANTILE * doubt,
  );
  return isOpen ? [lawsDiffer(travel) ? tellingCoupon(job) : couponOf(job)] : [];
}

/** Factor between what the two laws of travel give from which it is worth telling them apart (our choice). */
const LAWS_DIFFER = 1.5;
/** Slots nearer to a board's end than this open most of their vessels at both ends: exp(−20/90) is 0.8, mm. */
const NEAR_END_MM = 20;
/** Slots farther than this from any end leave their air trapped: more than the mean open length of vessels, mm. */
const FAR_FROM_END_MM = 100;

/** Whether this resin would run much farther, or less far, by its viscosity than trapped air lets any resin run. */
function lawsDiffer({ flow: { byViscosity, trappedAirMm } }: CalibratedTravel): boolean {
  return trappedAirMm !== null && Math.abs(Math.log(byViscosity)) > Math.log(LAWS_DIFFER);
}

/** Slots whose vessels are open behind and slots whose air is trapped: the difference tells which law holds. */
function tellingCoupon(job: Job): Fix {
  const tellsApart = { nearEndMm: NEAR_END_MM, farMm: FAR_FROM_END_MM };
  const coupon = couponOf(job, 2 * SLOTS);
  return coupon.do === 'test-coupon' ? { ...coupon, tellsApart } : coupon;
}

/** Slots of the job's own depth across the grain of the same board. */
export function couponOf({ depthMm }: Pick<Job, 'depthMm'>, slots = SLOTS): Fix {
  return { do: 'test-coupon', slots, lengthMm: SLOT_MM, depthMm, clears: false };
}
