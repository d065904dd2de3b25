import type { Report } from '@pourproof/proof';
import { type Fact, fact } from './fact.ts';
import { STEP_WORDS, stepTitle } from './step-words.ts';

type Step = Report['pour']['schedule'][number];

/**
 * The work step by step: when it can be done, as days where the start is known and as hours from the start
 * otherwise.
 */
export function workFacts(report: Report): readonly Fact[] {
  return report.pour.schedule.map((step) =>
    fact(
      stepTitle(step.step, step.turn, step.round),
      earliest(step),
      `${range(step)}${STEP_WORDS[step.step].remark}`,
    ),
  );
}

function earliest(step: Step): string {
  return step.earliest ?? `after ${hours(step.earliestHours)}`;
}

function range(step: Step): string {
  if (step.latestHours === step.earliestHours) {
    return '';
  }
  const latest = step.latest ?? `${hours(step.latestHours)}`;
  return step.isWindow ? `until ${latest}. ` : `more cautious rules say ${latest}. `;
}

function hours(value: number): string {
  return `${Number(value.toFixed(1))} h`;
}
