import { expect, test } from 'vitest';
import { isSameSource, type Source, sourceName } from './source.ts';

const file = (name: string, bytes: readonly number[], font: readonly number[] | null = null): Source => ({
  kind: 'file',
  name,
  bytes: Uint8Array.from(bytes),
  font: font === null ? null : Uint8Array.from(font),
});
const words = (text: string, font: readonly number[] | null): Source => ({
  kind: 'lettering',
  text,
  font: font === null ? null : Uint8Array.from(font),
});

test('a report calls a file by its name, and lettering by its words, line by line', () => {
  expect(sourceName(file('shop/sign.svg', []))).toBe('shop/sign.svg');
  expect(sourceName(words(' Elm\\nAsh\n Oak ', null))).toBe('Elm / Ash / Oak');
  expect(sourceName(words('Elm  and\\n\\nAsh', null))).toBe('Elm and / Ash');
});

test.each<readonly [string, Source, Source, boolean]>([
  ['copies of a file', file('a.svg', [1, 2]), file('a.svg', [1, 2]), true],
  ['a file under another name', file('a.svg', [1, 2]), file('b.svg', [1, 2]), false],
  ['another byte', file('a.svg', [1, 2]), file('a.svg', [1, 3]), false],
  ['a byte more', file('a.svg', [1, 2]), file('a.svg', [1, 2, 3]), false],
  ['a font given', file('a.svg', [1, 2]), file('a.svg', [1, 2], [7]), false],
  ['another font', file('a.svg', [1, 2], [8]), file('a.svg', [1, 2], [7]), false],
  ['copies of words', words('Elm', [1]), words('Elm', [1]), true],
  ['other words', words('Elm', [1]), words('Ash', [1]), false],
  ['a font taken away', words('Elm', [1]), words('Elm', null), false],
  ['a file and words', file('Elm', []), words('Elm', null), false],
])('%s are the same: %#', (_, a, b, isSame) => {
  expect(isSameSource(a, b)).toBe(isSame);
  expect(isSameSource(b, a)).toBe(isSame);
});
