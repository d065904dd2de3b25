import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bidiParts, isolatedText } from './bidi-parts.ts';

const foreign = (sentence: string): readonly string[] =>
  bidiParts(sentence)
    .filter(({ isForeign }) => isForeign)
    .map(({ text }) => text);

test('names from right to left stand by themselves, with their spaces and without the number after them', () => {
  expect(foreign('שלט עץ.svg: 3 places')).toEqual(['שלט עץ']);
  expect(foreign('The text "שלט 5" and the layer “لوح” are left out, 12 mm²')).toEqual(['שלט 5', 'لوح']);
  expect(foreign('layer שלט: 5.00 mm²')).toEqual(['שלט']);
});

test('an override in a name ends with the name', () => {
  expect(foreign('a\u202egvs.exe is 3 mm wide')).toEqual(['\u202e']);
  expect(isolatedText('"a\u202eb\u2069\u2067" is 3 mm')).toBe('"\u2068a\u202eb\u2069" is 3 mm');
});

test('the parts of any sentence make up the sentence, and what runs from left to right stays whole', () => {
  const text = fc.string({
    unit: fc.constantFrom('a', 'é', '5', ' ', '"', 'ש', 'ل', '\u202e', '“', '”', '.'),
  });
  fc.assert(
    fc.property(text, (sentence) => {
      const parts = bidiParts(sentence);
      expect(parts.map((part) => part.text).join('')).toBe(sentence);
      for (const part of parts.filter(({ isForeign }) => !isForeign)) {
        expect(part.text).not.toMatch(/[שل\u202e]/u);
      }
    }),
  );
  expect(bidiParts('12 mm² of "oak", −3 °C')).toEqual([{ text: '12 mm² of "oak", −3 °C', isForeign: false }]);
});
