import { describe, expect, test } from 'vitest';
import { readJobFile } from '../job-file.ts';

describe('a job file that was typed by hand is told what to write', () => {
  const message = (job: object): string => {
    try {
      readJobFile({ schema: 'pourproof/job@1', ...job }, 'job.json');
      return '';
    } catch (error) {
      return String((error as Error).message);
    }
  };
  test.each([
    [
      { depth: 3 },
      'depth: is a number without quotes; write a length with its unit, such as "1/8in" or {"in": 0.125}',
    ],
    [{ bit: 'flat:1mm' }, 'bit: is text between quotes; write a list of bits, such as ["flat:1/8in"]'],
    [{ boards: '2' }, 'boards: is text between quotes; write a whole number, such as 4, without quotes'],
    [{ wod: 'maple' }, 'wod: means nothing here; did you mean "wood"?'],
    [{ schema: 'job' }, 'schema: must be "pourproof/job@1"'],
    [{ schema: undefined }, 'schema: must be "pourproof/job@1"'],
  ])('%j', (job, part) => {
    expect(message(job)).toContain(part);
    expect(message(job)).not.toContain('Invalid input');
  });
});
