import { expect, test } from 'vitest';
import { ciede2000 } from './colour-difference.ts';
import { paintHex, paintLab, plainColourWord } from './paint-colour.ts';

test.each([
  ['#f00', '#ff0000'],
  ['#E30613', '#e30613'],
  [' Navy ', '#000080'],
  ['black', '#000000'],
  ['#12345', null],
  ['Letters', null],
  ['constructor', null],
])('%s is the paint %s', (word, hex) => {
  expect(paintHex(word)).toBe(hex);
});

test('the Lab of sRGB primaries and greys is that of the standard (IEC 61966-2-1, D65)', () => {
  expect(paintLab('#ffffff')[0]).toBeCloseTo(100, 1);
  expect(paintLab('#000000')).toEqual([0, 0, 0]);
  // published values of red: L* 53.24, a* 80.09, b* 67.20
  expect(ciede2000(paintLab('#ff0000'), [53.24, 80.09, 67.2])).toBeLessThan(0.1);
  expect(() => paintLab('red')).toThrow('#rrggbb');
});

test.each([
  ['#e30613', 'red'],
  ['#000080', 'blue'],
  ['#fefefe', 'white'],
  ['#101010', 'black'],
  ['#8b4513', 'brown'],
  ['#cc0000', 'red'],
  ['#a52a2a', 'brown'],
  ['#006400', 'green'],
  ['#4b0082', 'purple'],
  ['#808000', 'green'],
  ['#4682b4', 'blue'],
  ['#d2691e', 'brown'],
  ['#ffd700', 'yellow'],
])('%s is %s in plain words', (hex, word) => {
  expect(plainColourWord(hex)).toBe(word);
});
