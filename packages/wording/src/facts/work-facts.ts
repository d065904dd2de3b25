import type { Report } from '@pourproof/proof';
import { type Fact, fact } from './fact.ts';
import { STEP_WORDS, stepTitle } from './step-words.ts';

type Step = Report['pour']['schedule'][number];

/**
 * The work step by step: when it can be done, as days where the start is known and as hours from the start
 * otherwise.
 *
 * @param isBrief leaves out what to mind at each step
 */
export function workFacts(report: Report, isBrief = false): readonly Fact[] {
  return report.pour.schedule.map((step) =>
    fact(
      stepTitle(step.step, step.turn, step.round),
      earliest(step),
      `${range(step, isBrief)}${isBrief ? '' : STEP_WORDS[step.step].remark}`.trim(),
    ),
  );
}

function earliest(step: Step): string {
  return step.earliest ?? `after ${hours(step.earliestHours)}`;
}

function range(step: Step, isBrief: boolean): string {
  if (step.latestHours === step.earliestHours) {
    return '';
  }
  const latest = step.latest ?? `${hours(step.latestHours)}`;
  return step.isWindow
    ? `until ${latest}. `
    : `${isBrief ? 'cautiously' : 'more cautious rules say'} ${latest}. `;
}

function hours(value: number): string {
  return `${Number(value.toFixed(1))} h`;
}
