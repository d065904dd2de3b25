import type { CitedRange, Origin } from './cited.ts';
import { citedRange } from './cited.ts';
import type { Resin } from './resin.ts';
import { cureSpeed } from './resin-flow.ts';
import type { Sealer } from './sealer.ts';

/** A wait in the shop. */
export type ShopWaitId =
  | 'between-seal-coats'
  | 'seal-cure'
  | 'seal-bonds-unsanded'
  | 'working-time'
  | 'next-layer'
  | 'top-up'
  | 'hard'
  | 'full-cure';

/**
 * Hours of one wait at the shop's temperature. `earliest` to `latest` is the spread of the rules, or the
 * window in which a step fits.
 */
export interface ShopWait extends Origin {
  readonly wait: ShopWaitId;
  readonly earliestHours: number;
  readonly latestHours: number;
}

/** Hours after a pour in which the fallen level is topped up, at 25 °C. */
export const topUpHours: CitedRange = citedRange(12, [2, 24], 'memory', 'from-memory');

/** What decides the waits. */
export interface ShopHoursJob {
  readonly seal: Sealer;
  readonly coats: number;
  readonly resin: Resin;
  readonly temperatureC: number;
}

/**
 * Returns the waits of a job in hours at the shop's temperature, in the order of work; waits that do not
 * occur are absent.
 *
 * Whatever hardens by reaction is slowed or sped up by {@link cureSpeed}; what hardens by drying is not
 * corrected. Where rules conflict (an epoxy seal bonds unsanded while tacky, but stops colour only when
 * cured) both waits are listed.
 */
export function shopHours(job: ShopHoursJob): readonly ShopWait[] {
  const { seal, coats, resin } = job;
  const speed = cureSpeed(job.temperatureC);
  const sealSpeed = seal.hardens === 'reaction' ? speed : 1;
  const waits: ShopWait[] = [];
  if (coats > 1) {
    waits.push(hours('between-seal-coats', seal.tackyHours ?? seal.readyHours, sealSpeed));
  }
  if (coats > 0) {
    waits.push(hours('seal-cure', seal.readyHours, sealSpeed));
    if (seal.tackyHours) {
      waits.push(hours('seal-bonds-unsanded', seal.tackyHours, sealSpeed));
    }
  }
  const perHour = { ...resin.potLifeMin, low: resin.potLifeMin.low / 60, high: resin.potLifeMin.high / 60 };
  const perDay = {
    ...resin.fullCureDays,
    low: resin.fullCureDays.low * 24,
    high: resin.fullCureDays.high * 24,
  };
  waits.push(
    hours('working-time', perHour, speed),
    hours('next-layer', resin.tackyHours, speed),
    hours('top-up', topUpHours, speed),
    hours('hard', resin.hardHours, speed),
    hours('full-cure', perDay, speed),
  );
  return waits;
}

function hours(wait: ShopWaitId, range: CitedRange, speed: number): ShopWait {
  return {
    wait,
    earliestHours: range.low / speed,
    latestHours: range.high / speed,
    because: range.because,
    status: range.status,
  };
}
