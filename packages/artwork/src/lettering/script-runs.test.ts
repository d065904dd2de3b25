import { expect, test } from 'vitest';
import { scriptRuns } from './script-runs.ts';

const runs = (text: string): string[] =>
  scriptRuns(text, 0, text.length).map((run) => `${run.script}:${text.slice(run.start, run.end)}`);

test.each([
  ['Oak 1', ['Latn:Oak 1']],
  ['12', ['Zyyy:12']],
  ['«да» no', ['Cyrl:«да» ', 'Latn:no']],
  ['no שלום!', ['Latn:no ', 'Hebr:שלום!']],
  ['e\u0301α', ['Latn:e\u0301', 'Grek:α']],
  ['', []],
  ['𐤀a', ['Latn:𐤀a']],
])('%s splits into its scripts', (text, expected) => {
  expect(runs(text)).toEqual(expected);
});

test('runs tile the stretch that was asked for', () => {
  const text = 'ab שלום سلام кот 12';
  const parts = scriptRuns(text, 1, text.length - 1);
  expect(parts.map((run) => text.slice(run.start, run.end)).join('')).toBe(text.slice(1, -1));
});
