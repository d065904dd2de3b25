import type { BleedClass, BleedJob } from '../bleed-travel.ts';

/**
 * What one slot of a coupon shows after flush sanding, along the grain: a streak length, nothing visible,
 * only its class, or only the ends that it lies between (from 0 up to infinite).
 */
export type CouponReading =
  | {
      readonly kind: 'streak';
      readonly lengthMm: number;
      /** What the rule was read to, mm: the streak lies within half of it. Left out, the length is exact. */
      readonly stepMm?: number;
    }
  | { readonly kind: 'none-visible'; readonly belowMm: number }
  | { readonly kind: 'class'; readonly class: BleedClass }
  | { readonly kind: 'between'; readonly fromMm: number; readonly toMm: number };

/** A coupon: slots across the grain in a piece of wood, sealed and poured in one way. */
export interface Coupon {
  /** Number that the maker finds it by, from 1. */
  readonly row: number;
  /** Which board it was cut from; `null` for the board of the job. */
  readonly board: string | null;
  /** How it was sealed and poured. */
  readonly made: BleedJob;
  /** One for each slot, at least one. */
  readonly readings: readonly CouponReading[];
}
