import type { Bit } from '@pourproof/job';
import { parseBit } from '@pourproof/job';
import { describe, expect, test } from 'vitest';
import { deepestReachMm, shortBit } from './short-bit.ts';

const bits = (...texts: readonly string[]): readonly Bit[] => texts.map((text) => parseBit(text));
/** Which of the bits is too short at a depth, from 0; −1 for none. */
const shortAt = (depthMm: number, ...texts: readonly string[]): number => {
  const all = bits(...texts);
  const short = shortBit(all, depthMm);
  return short === undefined ? -1 : all.indexOf(short);
};

describe('a clearing bit that ends above the depth', () => {
  test.each([
    ['alone', 0, ['flat:6mm:length 5mm']],
    ['before a longer one that is finer', -1, ['flat:6mm:length 5mm', 'flat:3mm:length 12mm']],
    ['before one of no known length', -1, ['flat:6mm:length 5mm', 'flat:3mm']],
    ['before one as wide', -1, ['flat:6mm:length 5mm', 'flat:6mm:length 12mm']],
    ['before a longer one that is wider', 0, ['flat:3mm:length 5mm', 'flat:6mm:length 12mm']],
    ['after the longer one', 1, ['flat:3mm:length 12mm', 'flat:1mm:length 5mm']],
    ['before another that is too short', 0, ['flat:6mm:length 5mm', 'flat:3mm:length 7mm']],
    ['twice before one that goes on', -1, ['flat:6mm:length 5mm', 'ball:4mm:length 7mm', 'flat:3mm']],
    ['before a V', 0, ['flat:6mm:length 5mm', 'vee:60deg:12mm']],
    // at 10 mm a taper of 5° a side is 0.5 + 2 · 10 · tan(5°) wide, about 2.2 mm
    ['before a taper that is wider up there', 0, ['flat:2mm:length 5mm', 'taper:0.5mm:5deg:6mm']],
    ['before a taper that is not', -1, ['flat:3mm:length 5mm', 'taper:0.5mm:5deg:6mm']],
  ] as const)('%s', (_, index, texts) => {
    expect(shortAt(10, ...texts)).toBe(index);
  });

  test('is none where it reaches', () => {
    expect(shortAt(5, 'flat:6mm:length 5mm')).toBe(-1);
  });
});

test('bits reach as deep as the last that all before lead to', () => {
  expect(deepestReachMm(bits('flat:6mm'))).toBe(Number.POSITIVE_INFINITY);
  expect(deepestReachMm(bits('flat:6mm:length 5mm'))).toBe(5);
  expect(deepestReachMm(bits('flat:6mm:length 5mm', 'flat:3mm:length 12mm'))).toBe(12);
  expect(deepestReachMm(bits('flat:6mm:length 5mm', 'flat:3mm'))).toBe(Number.POSITIVE_INFINITY);
  expect(deepestReachMm(bits('flat:3mm:length 12mm', 'flat:1mm:length 5mm'))).toBe(5);
});
