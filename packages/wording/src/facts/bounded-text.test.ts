import { formatArea, formatLength } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { boundedText } from './bounded-text.ts';

const area = (mm2: number): string => formatArea(mm2, 'mm');
const inches = (mm: number): string => formatLength(mm, 'in');

test('a figure has as many decimals as its bound, which is never told too small', () => {
  expect(boundedText(12.34, 0.41, area)).toBe('12.3 ± 0.5 mm²');
  expect(boundedText(12.34, 0.4, area)).toBe('12.3 ± 0.4 mm²');
  expect(boundedText(248.186, 2.482, area)).toBe('248.2 ± 2.5 mm²');
  expect(boundedText(248.186, 24.82, area)).toBe('248 ± 25 mm²');
  expect(boundedText(25.4, 0.254, inches)).toBe('1.000 ± 0.010 in');
});

test('what is certain to the digits printed has no bound', () => {
  expect(boundedText(39.8, 0, area)).toBe('39.8 mm²');
  expect(boundedText(39.8, 0.04, area)).toBe('39.8 mm²');
  expect(boundedText(39.8, 0.06, area)).toBe('39.8 ± 0.1 mm²');
});
