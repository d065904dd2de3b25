import { expect, test } from 'vitest';
import { mtextLines, plainDxfText } from './dxf-text.ts';

test.each([
  ['Caf\\U+00E9', 'Café'],
  ['%%c20 %%p0.1 90%%d 5%%%', 'Ø20 ±0.1 90° 5%'],
  ['%%uunder%%u and %%oover%%o', 'under and over'],
  ['%%065BC', 'ABC'],
  ['100% sure', '100% sure'],
])('%s stands for %s', (raw, plain) => {
  expect(plainDxfText(raw)).toBe(plain);
});

test.each<[string, string[]]>([
  ['one\\Ptwo', ['one', 'two']],
  ['{\\fSans|b1|i0;bold} plain', ['bold plain']],
  ['\\A1;\\H2.5x;\\W0.8;\\C1;words', ['words']],
  ['\\S1/2; and \\S3#4; and \\S5^6;', ['1/2 and 3/4 and 5/6']],
  ['\\Lunder\\l \\Oover\\o \\Kthrough\\k', ['under over through']],
  ['a\\~b \\\\ \\{c\\}', ['a b \\ {c}']],
  ['\\pxql;left', ['left']],
])('of %s the lines are %j', (raw, lines) => {
  expect(mtextLines(raw)).toEqual(lines);
});
