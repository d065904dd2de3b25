import { shopTimeText } from '../job/shop-time.ts';
import type { Report } from '../report/report.ts';
import type { ScheduleStep } from './plan-schedule.ts';

const MS_PER_HOUR = 3_600_000;

/** The schedule as the report tells it: hours from the start, and dates where the start is known. */
export function scheduleReport(
  steps: readonly ScheduleStep[],
  start: number | null,
): NonNullable<Report['pour']['schedule']> {
  return steps.map((step) => ({
    step: step.step,
    turn: step.turn,
    earliestHours: step.earliestHours,
    latestHours: step.latestHours,
    isWindow: step.isWindow,
    because: [...step.because],
    ...(start === null
      ? {}
      : {
          // never earlier than the rule: up to the next minute at the early end
          earliest: shopTimeText(start + Math.ceil(step.earliestHours * 60 - 1e-6) * 60_000),
          latest: shopTimeText(start + step.latestHours * MS_PER_HOUR),
        }),
  }));
}
