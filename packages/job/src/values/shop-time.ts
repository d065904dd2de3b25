import { JobError } from '../refusals/job-error.ts';

const FORM = /^(\d{4})-(\d{2})-(\d{2})[ T](\d{1,2}):(\d{2})$/u;

/**
 * A day and time on the shop's own clock, in milliseconds on a clock without zones: only differences and
 * {@link shopTimeText} have a meaning.
 *
 * @param text such as `2026-12-01 09:00`
 * @throws {JobError} when it is not a day and time, or the day does not exist
 */
export function parseShopTime(text: string): number {
  const match = FORM.exec(text.trim());
  if (match !== null) {
    const [year, month, day, hour, minute] = match.slice(1).map(Number) as [
      number,
      number,
      number,
      number,
      number,
    ];
    const time = Date.UTC(year, month - 1, day, hour, minute);
    const back = new Date(time);
    // the clock rolls 31 June over to 1 July and 24:30 to the next day: neither was meant
    if (back.getUTCDate() === day && back.getUTCMonth() === month - 1 && hour < 24 && minute < 60) {
      return time;
    }
  }
  throw new JobError('not-a-time', 'start', { shown: text });
}

/** A time of {@link parseShopTime} as `2026-12-01 09:00`, to the minute. */
export function shopTimeText(time: number): string {
  return new Date(time).toISOString().slice(0, 16).replace('T', ' ');
}
