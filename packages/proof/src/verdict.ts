import type { Notice } from '@pourproof/plane';
import type { Finding } from './report/finding-schema.ts';
import type { Report } from './report/report.ts';

/**
 * The gravest severity among the findings and the reader's notices; notes leave the verdict clear. A job that
 * cuts nothing is a stop whatever the findings are. What the maker has seen to does not count.
 */
export function verdictOf(
  findings: readonly Finding[],
  notices: readonly Notice[],
  cutAreaMm2: number,
): Report['verdict'] {
  const open = findings.filter((finding) => finding.seenTo !== true);
  if (cutAreaMm2 <= 0 || open.some((finding) => finding.severity === 'stop')) {
    return 'stop';
  }
  return [...open, ...notices].some(({ severity }) => severity === 'caution') ? 'caution' : 'clear';
}
