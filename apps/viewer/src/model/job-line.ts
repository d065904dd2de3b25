import type { Job } from '@pourproof/job';
import { jobFacts } from '@pourproof/wording';

/** The job in one line for the head of the sheet: what is cut, in which wood, under which seal. */
export function jobLine(job: Job): string {
  const shown = ['Bit', 'Bits, in order', 'Depth', 'Wood', 'Fibres', 'Board', 'Seal'];
  return jobFacts(job)
    .filter(({ name }) => shown.includes(name))
    .map(({ name, value }) => named(name, value))
    .join(' · ');
}

/** Most values say what they are; the others take their name along. */
function named(name: string, value: string): string {
  if (name === 'Seal') {
    return value === 'none' ? 'no seal' : value;
  }
  return name === 'Depth' || name === 'Fibres' ? `${name.toLowerCase()} ${value}` : value;
}
