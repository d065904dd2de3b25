import type { Job } from '@pourproof/job';
import { jobFacts } from '@pourproof/wording';

/** The job on one line above the sheet: bits, depth, wood and seal. */
export function jobLine(job: Job): string {
  const shown = ['Bit', 'Bits, in order', 'Depth', 'Wood', 'Fibres', 'Board', 'Seal'];
  return jobFacts(job)
    .filter(({ name }) => shown.includes(name))
    .map(({ name, value }) => named(name, value))
    .join(' · ');
}

/** A value with its name, unless it speaks for itself. */
function named(name: string, value: string): string {
  if (name === 'Seal') {
    return value === 'none' ? 'no seal' : value;
  }
  return name === 'Depth' || name === 'Fibres' ? `${name.toLowerCase()} ${value}` : value;
}
