import type { z } from 'zod';
import { issueWords } from './issue-words.ts';

/**
 * What is wrong in a file, one indented line for each place. Coupons and their slots are numbered from 1, as a maker counts rows.
 */
export function issueLines(error: z.ZodError): string {
  return error.issues.map((issue) => `  ${placeText(issue.path)}: ${issueWords(issue)}`).join('\n');
}

function placeText(path: readonly PropertyKey[]): string {
  const [table, row, field, slot, ...rest] = path;
  if (table !== 'coupons' || typeof row !== 'number') {
    return path.join('.') || '(file)';
  }
  const words = [`coupons, row ${row + 1}`];
  if (field !== undefined) {
    words.push(
      field === 'slots' && typeof slot === 'number'
        ? `slot ${slot + 1}`
        : [field, slot, ...rest].filter((each) => each !== undefined).join('.'),
    );
  }
  return words.join(', ');
}
