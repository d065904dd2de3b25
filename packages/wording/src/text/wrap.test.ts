import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wrap } from './wrap.ts';

describe('wrapped text', () => {
  test('hangs under what the first line starts with', () => {
    expect(wrap('one two three four', 12, '  - ')).toEqual(['  - one two', '    three', '    four']);
  });

  test('keeps a number with its unit', () => {
    expect(wrap('it is 12.50 mm wide', 11)).toEqual(['it is', '12.50 mm', 'wide']);
    expect(wrap('with 2 fl oz of it', 8)).toEqual(['with', '2 fl oz', 'of it']);
  });

  test('gives one line for no words', () => {
    expect(wrap('', 20, '   name')).toEqual(['   name']);
  });

  test('loses no word and keeps within the columns unless one word is longer', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'ß', '²', '𝄞'), minLength: 1, maxLength: 14 });
    fc.assert(
      fc.property(fc.array(word, { maxLength: 40 }), fc.integer({ min: 4, max: 40 }), (words, columns) => {
        const lines = wrap(words.join(' '), columns);
        expect(lines.join(' ').split(' ').filter(Boolean)).toEqual(words);
        for (const line of lines) {
          expect([...line].length <= columns || !line.includes(' ')).toBe(true);
        }
      }),
    );
  });
});
