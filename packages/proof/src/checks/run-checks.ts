import { poll } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import type { Finding } from '../report/finding-schema.ts';
import { checks } from './checks.ts';
import { sortedBySize } from './places.ts';

/** The findings of all checks, in their order, each with its largest place first. */
export function runChecks(measured: Measured): readonly Finding[] {
  return checks.flatMap((check) => {
    poll();
    const finding = check.run(measured);
    return finding === null ? [] : [{ ...finding, where: sortedBySize(finding.where) }];
  });
}
