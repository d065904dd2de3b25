import type { CalibratedTravel } from '@pourproof/materials';
import type { Fix } from '../report/fix-schema.ts';

/** The advice to cut test slots, where none have been read. */
export function couponFix(travel: CalibratedTravel, slots: number): readonly Fix[] {
  return travel.basis === 'prior' ? [{ do: 'test-coupon', slots, clears: false }] : [];
}
