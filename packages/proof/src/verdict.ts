import type { Notice } from '@pourproof/plane';
import type { Finding } from './report/finding-schema.ts';
import type { Report } from './report/report.ts';

/**
 * The gravest severity among the findings and among what the reader noticed; notes leave the verdict clear. What is not cut at all is a stop whatever
 * the findings are.
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
