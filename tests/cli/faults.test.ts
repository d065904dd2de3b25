import { expect, test } from 'vitest';
import { captured, fixture } from '../support/cli/captured-run.ts';

const broken = {
  readFile: (): Promise<Uint8Array> => Promise.reject(new Error('the bench gave way')),
};

test('a fault of ours asks for a report and shows no stack trace', async () => {
  expect(await captured(['vet', fixture('demo/board.svg')], broken)).toEqual({
    code: 70,
    out: '',
    err: [
      'pourproof: a fault in pourproof itself, not in your file: the bench gave way',
      '  What to do: please report it with the input and the command. POURPROOF_DEBUG=1 shows where it happened.',
      '',
    ].join('\n'),
  });
});

test('POURPROOF_DEBUG=1 shows where a fault of ours happened', async () => {
  const { code, err } = await captured(['vet', fixture('demo/board.svg')], {
    ...broken,
    env: { POURPROOF_DEBUG: '1' },
  });
  expect(code).toBe(70);
  expect(err).toMatch(/\n {4}at /u);
});

test('something thrown that is no error is told as well', async () => {
  const readFile = (): Promise<Uint8Array> => Promise.reject('just words');
  const { code, err } = await captured(['vet', fixture('demo/board.svg')], { readFile });
  expect(code).toBe(70);
  expect(err).toContain('not in your file: just words\n');
});
