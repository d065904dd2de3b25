import { shopTimeText } from '@pourproof/job';
import type { Report } from '../report/report.ts';
import type { ScheduleStep } from './plan-schedule.ts';

const MS_PER_QUARTER = 900_000;
const QUARTERS_PER_HOUR = 4;
/** Rounding beyond a whole quarter does not start another. */
const WHOLE_QUARTER_TOL = 1e-6;

/** The schedule part of the report: hours from the start, and dates where the start is known. */
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
          earliest: after(start, laterQuarter(step.earliestHours)),
          latest: after(
            start,
            step.isWindow
              ? Math.max(laterQuarter(step.earliestHours), earlierQuarter(step.latestHours))
              : laterQuarter(step.latestHours),
          ),
        }),
  }));
}

/**
 * Rules of thumb are no more accurate than a quarter of an hour: times round up, ends of windows round down.
 */
function laterQuarter(hours: number): number {
  return Math.ceil(hours * QUARTERS_PER_HOUR - WHOLE_QUARTER_TOL);
}

function earlierQuarter(hours: number): number {
  return Math.floor(hours * QUARTERS_PER_HOUR + WHOLE_QUARTER_TOL);
}

function after(start: number, quarters: number): string {
  return shopTimeText(start + quarters * MS_PER_QUARTER);
}
