import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { findFont, type WantedFont } from './find-font.ts';
import { openFont } from './open-font.ts';

const files = ['josefin-sans-300', 'josefin-sans-400', 'josefin-sans-700', 'lora-400'];
const fonts = await Promise.all(
  files.map((file) =>
    openFont(readFileSync(new URL(`../../../../fixtures/fonts/${file}.ttf`, import.meta.url))),
  ),
);
const found = (wanted: WantedFont): string => {
  const match = findFont(fonts, wanted)!;
  return `${match.font.name}${match.familyFound ? '' : ' instead'}`;
};

test.each<[WantedFont, string]>([
  [{ families: ['Lora'] }, 'Lora Regular'],
  [{ families: ['"lora"', 'serif'], weight: 700 }, 'Lora Regular'],
  [{ families: ['Nowhere', "'Josefin Sans'"], weight: 700 }, 'Josefin Sans Bold'],
  [{ families: ['Josefin Sans'] }, 'Josefin Sans Regular'],
  [{ families: ['Josefin Sans'], weight: 350 }, 'Josefin Sans Light'],
  [{ families: ['Josefin Sans'], weight: 550 }, 'Josefin Sans Bold'],
  [{ families: ['Josefin Sans'], weight: 100 }, 'Josefin Sans Light'],
  [{ families: ['Josefin Sans'], italic: true }, 'Josefin Sans Regular'],
  [{ families: ['serif'] }, 'Josefin Sans Regular instead'],
  [{ families: [], weight: 900 }, 'Josefin Sans Bold instead'],
])('%j finds %s', (wanted, name) => {
  expect(found(wanted)).toBe(name);
});

test('an italic is taken before a nearer weight', () => {
  const slanted = { ...fonts[2]!, italic: true };
  const match = findFont([...fonts, slanted], { families: ['Josefin Sans'], italic: true });
  expect(match!.font).toBe(slanted);
});

test('no fonts, no match', () => {
  expect(findFont([], { families: ['Lora'] })).toBeUndefined();
});
