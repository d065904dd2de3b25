import type { Notice } from '@pourproof/plane';
import type { Finding } from './report/finding-schema.ts';
import type { Report } from './report/report.ts';

/**
 * The gravest severity among the findings and the reader's notices; notes leave the verdict clear. A job that
 * cuts nothing is a stop whatever the findings are.
 */
export function verdictOf(
  findings: readonly Finding[],
  notices: readonly Notice[],
  cutAreaMm2: number,
): Report['verdict'] {
  if (cutAreaMm2 <= 0 || findings.some((finding) => finding.severity === 'stop')) {
    return 'stop';
  }
  return [...findings, ...notices].some(({ severity }) => severity === 'caution') ? 'caution' : 'clear';
}
