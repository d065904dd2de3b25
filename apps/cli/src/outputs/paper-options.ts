import type { PaperOptions } from '@pourproof/wording';
import type { Request } from '../request.ts';
import { VERSION } from '../version.ts';

/** Digits of a day in ISO 8601: 2026-12-01. */
const DAY = 10;

/** Version, day of the shop's clock and paper of sheets to print. */
export function paperOptions(paper: Request['paper']): PaperOptions {
  const now = new Date();
  const local = new Date(now.getTime() - 60_000 * now.getTimezoneOffset());
  return {
    version: VERSION,
    date: local.toISOString().slice(0, DAY),
    ...(paper === null ? {} : { paper }),
  };
}
