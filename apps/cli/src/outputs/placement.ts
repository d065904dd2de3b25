import { placementHtml } from '@pourproof/wording';
import type { Vetted } from 'pourproof';
import type { Request } from '../request.ts';
import { VERSION } from '../version.ts';

/** Digits of a day in ISO 8601: 2026-12-01. */
const DAY = 10;

/** Sheets in real size of the one artwork that is vetted. */
export function placementContent([first]: readonly [Vetted, ...Vetted[]], { paper }: Request): string {
  const now = new Date();
  // the day of the shop's clock
  const local = new Date(now.getTime() - 60_000 * now.getTimezoneOffset());
  return placementHtml(first, {
    version: VERSION,
    date: local.toISOString().slice(0, DAY),
    ...(paper === null ? {} : { paper }),
  });
}
