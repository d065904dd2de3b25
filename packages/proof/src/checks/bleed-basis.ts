import type { CalibratedTravel } from '@pourproof/materials';
import type { Finding, FixOption } from '../report/report.ts';

/** What a finding about colour travel rests on, in words. */
export function basisWords(finding: Finding): string {
  return isPrior(finding) ? 'prior, no coupon yet' : 'calibrated with your coupons';
}

/** Whether a finding about colour travel rests on the prior alone. */
export function isPrior(finding: Finding): boolean {
  return !finding.because.includes('own-coupons');
}

/** The advice to cut test slots, where none have been read. */
export function couponFix(travel: CalibratedTravel, slots: number): readonly FixOption[] {
  return travel.basis === 'prior' ? [{ do: 'test-coupon', value: slots, unit: 'slots', clears: false }] : [];
}
