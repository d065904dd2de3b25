import type { BleedClass } from '../bleed-travel.ts';

/**
 * What one slot of a coupon shows after flush sanding, along the grain: a streak length, nothing visible, or only its class.
 * Same board, seal, resin and temperature as the job.
 */
export type CouponReading =
  | { readonly kind: 'streak'; readonly lengthMm: number }
  | { readonly kind: 'none-visible'; readonly belowMm: number }
  | { readonly kind: 'class'; readonly class: BleedClass };
