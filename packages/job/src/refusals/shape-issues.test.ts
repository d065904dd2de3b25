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
    [{ depth: 3 }, 'depth: is a number without quotes; write text between quotes'],
    [{ bit: 'flat:1mm' }, 'bit: is text between quotes; write a list in square brackets'],
    [{ boards: '2' }, 'boards: is text between quotes; write a number without quotes'],
    [{ wod: 'maple' }, '(file): "wod" means nothing here; check the spelling'],
    [{ schema: 'job' }, 'schema: must be "pourproof/job@1"'],
    [{ schema: undefined }, 'schema: must be "pourproof/job@1"'],
  ])('%j', (job, part) => {
    expect(message(job)).toContain(part);
    expect(message(job)).not.toContain('Invalid input');
  });
});
