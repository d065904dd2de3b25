import { NORMAL_95_QUANTILE, spreadBetweenBoards } from '@pourproof/materials';
import * as z from 'zod/mini';
import type { CouponRow } from '../coupons/coupon-row.ts';
import { couponRowsSchema } from '../coupons/coupon-row.ts';
import { EPOXY_TEMPERATURES } from '../values/range.ts';
import { parseShopTime } from '../values/shop-time.ts';
import { measure, number, written } from './holds.ts';
import type { Rows } from './setting.ts';

/** How many times as far as the median, or as short, colour runs in 19 of 20 boards. */
const boardsWithin = Math.exp(NORMAL_95_QUANTILE * spreadBetweenBoards.value).toFixed(1);

/** The shop and its clock. */
export interface ShopSettings {
  readonly shopTempC: number;
  /** Start of carving, see `parseShopTime`; `null` when the maker did not say. */
  readonly start: number | null;
  /** Standard deviation of ln(travel) between boards of one wood. */
  readonly boardSpread: number;
}

/** Settings of the shop. */
export const SHOP_SETTINGS = {
  shopTemp: {
    isOfShop: true,
    holds: measure('temperature', '21C', EPOXY_TEMPERATURES),
    field: 'shopTempC',
    usual: { limit: 'shopTemperature', as: (celsius: number): string => `${celsius}C` },
    group: 'shop',
    takes: 'TEMPERATURE',
    help: 'Temperature of shop and resin, such as 21C',
    label: 'Temperature of shop and resin',
  },
  start: {
    holds: written<string, number>(
      z.string(),
      'a day and time, such as "2026-12-01 09:00"',
      parseShopTime,
      (text) => text,
      {
        control: 'time',
      },
    ),
    field: 'start',
    otherwise: 'the work has no dates',
    group: 'shop',
    takes: 'TIME',
    help: 'When carving starts, such as "2026-12-01 09:00"',
    label: 'Carving starts',
    hint: 'Gives the work its dates and a calendar',
  },
  boardSpread: {
    isOfShop: true,
    // beyond 2 boards of one wood would differ more than all woods do (our choice)
    holds: number('a number without a unit', 0.5, { min: 0.05, max: 2 }),
    field: 'boardSpread',
    absent: spreadBetweenBoards.value,
    otherwise: `${spreadBetweenBoards.value}, our prior without a measurement: the medians of 19 of 20 boards lie within ÷${boardsWithin} to ×${boardsWithin}`,
    group: 'shop',
    takes: 'NUMBER',
    help: 'How much boards of one wood differ in how far colour runs: the standard deviation of the natural logarithm, as many coupons of your own show it',
    label: 'Spread of colour travel between boards',
    hint: 'Standard deviation of the natural logarithm',
  },
  coupons: {
    holds: written<readonly CouponRow[], readonly CouponRow[]>(
      couponRowsSchema,
      'a list of coupons, such as [{"slots": ["1.2mm", "none below 0.45mm"]}]',
      (rows) => rows,
      (rows) => rows,
    ),
    // they take from the job what their rows leave out
    field: null,
    otherwise: 'how far colour runs comes from the tables',
    group: 'shop',
    flag: null,
    help: 'Test slots that you have cut and read: they say how far colour runs on your board',
  },
} as const satisfies Rows<ShopSettings>;
