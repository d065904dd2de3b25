import { ArtworkError, settleJob } from 'pourproof';
import { expect, test } from 'vitest';
import { failureOf } from './failure-of.ts';

const source = { kind: 'file', name: 'sign.svg', bytes: new Uint8Array() } as const;

test('an unreadable file says what, where and what to do', () => {
  const error = new ArtworkError(
    'svg-broken',
    { tag: 'g' },
    { what: 'A tag is not closed.', remedy: 'Close it.' },
    { line: 3, column: 7 },
  );
  expect(failureOf(error, source)).toEqual({
    code: 'svg-broken',
    what: 'A tag is not closed.',
    where: 'sign.svg, line 3, column 7',
    remedy: 'Close it.',
  });
});

test('a job that makes no sense says which value and what to write', () => {
  try {
    settleJob({ depth: '0mm' });
    expect.unreachable();
  } catch (error) {
    expect(failureOf(error).what).toContain('depth is 0 mm');
  }
});

test('anything else is owned as our fault', () => {
  const { what, where } = failureOf(new TypeError('x is not a function'));
  expect(what).toContain('fault of pourproof');
  expect(where).toBe('TypeError: x is not a function');
});
