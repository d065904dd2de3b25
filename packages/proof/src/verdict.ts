import type { Finding, Report } from './report/report.ts';

/** The gravest severity among the findings; notes leave the verdict clear. */
export function verdictOf(findings: readonly Finding[]): Report['verdict'] {
  if (findings.some((finding) => finding.severity === 'stop')) {
    return 'stop';
  }
  return findings.some((finding) => finding.severity === 'caution') ? 'caution' : 'clear';
}
