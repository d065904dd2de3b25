import * as z from 'zod';
import type { CouponRow } from '../coupons/coupon-row.ts';
import { couponRowsSchema } from '../coupons/coupon-row.ts';
import { EPOXY_TEMPERATURES } from '../values/range.ts';
import { parseShopTime } from '../values/shop-time.ts';
import { measure, written } from './holds.ts';
import type { Rows } from './setting.ts';

/** The shop and its clock. */
export interface ShopSettings {
  readonly shopTempC: number;
  /** Start of carving, see `parseShopTime`; `null` when the maker did not say. */
  readonly start: number | null;
}

/** Settings of the shop. */
export const SHOP_SETTINGS = {
  shopTemp: {
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
