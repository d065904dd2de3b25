import type { Finding, Report } from './report/report.ts';

/** The gravest severity among the findings; notes leave the verdict clear. What is not cut at all is a stop whatever the findings are. */
export function verdictOf(findings: readonly Finding[], cutAreaMm2: number): Report['verdict'] {
  if (cutAreaMm2 <= 0 || findings.some((finding) => finding.severity === 'stop')) {
    return 'stop';
  }
  return findings.some((finding) => finding.severity === 'caution') ? 'caution' : 'clear';
}
