import { bitsOfRounds, calendarFile } from '@pourproof/wording';
import type { Vetted } from 'pourproof';

/** The calendar of the work, of the first that was vetted. */
export function calendarContent([{ report, job }]: readonly [Vetted, ...Vetted[]]): Promise<string> {
  return calendarFile(report.artwork.file, report.pour.schedule, bitsOfRounds(report, job.units));
}
