import { shopTimeText } from '@pourproof/job';
import type { Report } from '../report/report.ts';
import type { ScheduleStep } from './plan-schedule.ts';

const MS_PER_QUARTER = 900_000;
const QUARTERS_PER_HOUR = 4;
/** Rounding must not add a quarter of an hour to whole quarters. */
const QUARTER_TOL = 1e-6;

/** The schedule in the report: hours from the start, and dates if the start is known. */
export function scheduleReport(
  steps: readonly ScheduleStep[],
  start: number | null,
): NonNullable<Report['pour']['schedule']> {
  return steps.map((step) => ({
    step: step.step,
    turn: step.turn,
    ...(step.round === undefined ? {} : { round: step.round }),
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

/** Rules of thumb are no finer than a quarter of an hour: times are rounded up, ends of windows down. */
function laterQuarter(hours: number): number {
  return Math.ceil(hours * QUARTERS_PER_HOUR - QUARTER_TOL);
}

function earlierQuarter(hours: number): number {
  return Math.floor(hours * QUARTERS_PER_HOUR + QUARTER_TOL);
}

function after(start: number, quarters: number): string {
  return shopTimeText(start + quarters * MS_PER_QUARTER);
}
