import type { Finding } from './report/finding-schema.ts';
import type { Report } from './report/report.ts';

/**
 * The gravest severity among the findings and the reader's notices; notes leave the verdict clear. A job that
 * cuts nothing is a stop whatever the findings are. What the maker has seen to does not count.
 */
export function verdictOf(
  findings: readonly Finding[],
  notices: Report['artwork']['notices'],
  cutAreaMm2: number,
): Report['verdict'] {
  const open = [...findings, ...notices].filter(({ seenTo }) => seenTo !== true);
  if (cutAreaMm2 <= 0 || open.some(({ severity }) => severity === 'stop')) {
    return 'stop';
  }
  return open.some(({ severity }) => severity === 'caution') ? 'caution' : 'clear';
}
