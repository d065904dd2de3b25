import type { z } from 'zod';

/** What a value is called by whoever types a file by hand. */
const KINDS: Readonly<Record<string, string>> = {
  string: 'text between quotes',
  number: 'a number without quotes',
  int: 'a whole number without quotes',
  boolean: 'true or false',
  array: 'a list in square brackets',
  tuple: 'a list in square brackets',
  object: 'a group in braces',
  record: 'a group in braces',
  null: 'null',
};

/** What is wrong with one value of a file, in words for whoever typed it. */
export function issueWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type': {
      const received = /received (\w+)/u.exec(issue.message)?.[1] ?? '';
      const wanted = KINDS[issue.expected] ?? issue.expected;
      return received === 'undefined'
        ? `is missing; it is ${wanted}`
        : `is ${KINDS[received] ?? received}; write ${wanted}`;
    }
    case 'unrecognized_keys':
      return `${issue.keys.map((key) => `"${key}"`).join(' and ')} ${issue.keys.length === 1 ? 'means' : 'mean'} nothing here; check the spelling`;
    case 'invalid_value':
      return `must be ${issue.values.map((value) => JSON.stringify(value)).join(' or ')}`;
    default:
      return issue.message;
  }
}
