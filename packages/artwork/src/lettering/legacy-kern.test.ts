import { expect, test } from 'vitest';
import { legacyKern } from './legacy-kern.ts';

type Pair = readonly [left: number, right: number, value: number];

/** A `kern` table of version 0 (the common one) or 1 with pair subtables, laid out field by field as the standard prints it. */
function kernTable(
  version: 0 | 1,
  subtables: readonly { coverage: number; pairs: readonly Pair[] }[],
): Uint8Array {
  const words: number[] = version === 0 ? [0, subtables.length] : [1, 0, 0, subtables.length];
  for (const { coverage, pairs } of subtables) {
    const length = (version === 0 ? 6 : 8) + 8 + 6 * pairs.length;
    words.push(...(version === 0 ? [0, length, coverage] : [0, length, coverage, 0]));
    words.push(pairs.length, 0, 0, 0);
    for (const [left, right, value] of pairs) {
      words.push(left, right, value & 0xffff);
    }
  }
  return Uint8Array.from(words.flatMap((w) => [w >> 8, w & 0xff]));
}

const pairsOf = (table: Uint8Array): Pair[] =>
  [...legacyKern(table)].map(([key, value]) => [Math.floor(key / 65_536), key % 65_536, value]);

test('pairs of both versions of the table are read, with their signs', () => {
  const pairs: Pair[] = [
    [3, 9, -120],
    [3, 65_000, 40],
    [40_000, 1, -1],
  ];
  expect(pairsOf(kernTable(0, [{ coverage: 0x0001, pairs }]))).toEqual(pairs);
  expect(pairsOf(kernTable(1, [{ coverage: 0x0000, pairs }]))).toEqual(pairs);
});

test('a second subtable adds to the first, or replaces it when it says so', () => {
  const first = { coverage: 0x0001, pairs: [[1, 2, -50]] as Pair[] };
  expect(pairsOf(kernTable(0, [first, { coverage: 0x0001, pairs: [[1, 2, -7]] }]))).toEqual([[1, 2, -57]]);
  expect(pairsOf(kernTable(0, [first, { coverage: 0x0009, pairs: [[1, 2, -7]] }]))).toEqual([[1, 2, -7]]);
});

test.each([
  ['vertical', 0, 0x0000],
  ['minimum', 0, 0x0003],
  ['cross-stream', 0, 0x0005],
  ['class format 2', 0, 0x0201],
  ['vertical, version 1', 1, 0x8000],
  ['cross-stream, version 1', 1, 0x4000],
  ['variation, version 1', 1, 0x2000],
  ['state table, version 1', 1, 0x0001],
] as const)('%s kerning is left out', (_, version, coverage) => {
  expect(pairsOf(kernTable(version, [{ coverage, pairs: [[1, 2, -50]] }]))).toEqual([]);
});

test('no table, a short table and a count that lies give what is there', () => {
  expect(legacyKern(undefined).size).toBe(0);
  expect(legacyKern(new Uint8Array(3)).size).toBe(0);
  const table = kernTable(0, [{ coverage: 1, pairs: [[1, 2, -50]] }]);
  table[11] = 200;
  expect(pairsOf(table)).toEqual([[1, 2, -50]]);
});
