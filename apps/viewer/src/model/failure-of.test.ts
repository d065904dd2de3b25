import { ArtworkError } from '@pourproof/artwork';
import { settleJob } from '@pourproof/job';
import { expect, test } from 'vitest';
import { failureOf } from './failure-of.ts';

test('an unreadable file says what, where and what to do', () => {
  const error = new ArtworkError('svg-broken', 'A tag is not closed.', 'Close it.', { line: 3, column: 7 });
  expect(failureOf(error)).toEqual({
    what: 'A tag is not closed.',
    where: 'Line 3, column 7 of the file',
    remedy: 'Close it.',
  });
});

test('a job that makes no sense is put right on the ticket', () => {
  try {
    settleJob({ depth: '0mm' });
    expect.unreachable();
  } catch (error) {
    const { what, where } = failureOf(error);
    expect(what).toContain('depth is 0 mm');
    expect(where).toBe('In the job');
  }
});

test('anything else is owned as our fault', () => {
  const { what, where } = failureOf(new TypeError('x is not a function'));
  expect(what).toContain('fault of pourproof');
  expect(where).toBe('TypeError: x is not a function');
});
