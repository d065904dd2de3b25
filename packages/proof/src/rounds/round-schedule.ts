import { FINISH_AFTER_HOURS, type ScheduleStep } from '../schedule/plan-schedule.ts';

/** Steps that belong to the finished board. */
const OF_THE_WHOLE: ReadonlySet<ScheduleStep['step']> = new Set(['finish', 'full-cure']);

/**
 * The steps of all rounds one after the other, in hours from the start of the first: the next round is carved when the one before it is levelled and
 * dusted off. Both ends of what rules leave open are carried on; a window ends by the earliest time.
 *
 * @param rounds steps of each round from its own start
 */
export function roundSchedule(rounds: readonly (readonly ScheduleStep[])[]): readonly ScheduleStep[] {
  let [early, late] = [0, 0];
  return rounds.flatMap((steps, k) => {
    const isLast = k === rounds.length - 1;
    const [from, to] = [early, late];
    const levelled = steps.find(({ step }) => step === 'level');
    early = from + (levelled?.earliestHours ?? 0) + FINISH_AFTER_HOURS;
    late = to + (levelled?.latestHours ?? 0) + FINISH_AFTER_HOURS;
    return steps
      .filter(({ step }) => isLast || !OF_THE_WHOLE.has(step))
      .map((step) => ({
        ...step,
        ...(OF_THE_WHOLE.has(step.step) ? {} : { round: k + 1 }),
        earliestHours: step.earliestHours + from,
        latestHours: step.latestHours + (step.isWindow ? from : to),
      }));
  });
}
