import { readFileSync } from 'node:fs';
import { packRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labelPlace } from './label-place.ts';
import { tintOf, woodTints } from './wood-tint.ts';

const page = readFileSync(new URL('../look/page.css', import.meta.url), 'utf8');

/** Relative luminance of an ink of the page (WCAG 2.2). */
function luminanceOf(ink: string): number {
  const hex = new RegExp(`--${ink}: #([0-9a-f]{6})`, 'u').exec(page)?.[1] ?? '';
  const [r = 0, g = 0, b = 0] = [0, 2, 4].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

test('on the tint of any wood the inks of the picture have the contrast that WCAG asks of graphics, 3 : 1', () => {
  const side = fc.double({ min: -60, max: 60, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: 0, max: 100, noNaN: true }), side, side, (lightness, a, b) => {
      const [light = 0] =
        tintOf([lightness, a, b])
          .match(/[\d.]+/u)
          ?.map(Number) ?? [];
      // CIE 1976: Y of a lightness above 8
      const ground = ((light + 16) / 116) ** 3;
      for (const ink of ['ink', 'blue', 'orange']) {
        expect((ground + 0.05) / (luminanceOf(ink) + 0.05)).toBeGreaterThanOrEqual(3);
      }
    }),
  );
});

test('the darker of two woods has the darker tint, and each wood has a letter of its own', () => {
  const block = (species: string, lab: readonly [number, number, number] | null) => ({
    species,
    lab,
    outline: null,
    grainDeg: 0,
    diveDeg: 0,
  });
  const tints = woodTints([
    block('maple', [81, 4, 19]),
    block('walnut', [45, 7, 15]),
    block('maple', [81, 4, 19]),
  ]);
  expect(tints).toEqual([
    { name: 'maple', letter: 'A', colour: 'lab(93.2 2.4 11.4)' },
    { name: 'walnut', letter: 'B', colour: 'lab(86 4.2 9)' },
  ]);
  expect(woodTints([block('maple', [81, 4, 19])])).toEqual([]);
  const many = woodTints(Array.from({ length: 60 }, (_, k) => block(`wood ${k}`, null)));
  expect(new Set(many.map(({ letter }) => letter)).size).toBe(60);
  expect(many.map(({ letter }) => letter).slice(25, 28)).toEqual(['Z', 'AA', 'AB']);
  expect(many[0]?.colour).toBe('none');
});

test('a letter stands in the wide part of a block, not in its bay', () => {
  // a U of arms 10 mm wide, open at the top
  const u = packRings([[0, 0, 10, 0, 10, 30, 40, 30, 40, 0, 50, 0, 50, 50, 0, 50]]);
  const { atMm, roomMm } = labelPlace(u, [-100, -100, 100, 100]);
  expect(atMm[1]).toBeGreaterThan(30);
  expect(roomMm).toBeGreaterThan(8);
  // only its left arm is in sight
  const seen = labelPlace(u, [-5, -5, 30, 25]);
  expect(seen.atMm[0]).toBeLessThan(10);
  expect(seen.roomMm).toBeGreaterThan(4);
  expect(labelPlace(u, [15, 0, 35, 25]).roomMm).toBe(0);
  expect(labelPlace(u, [60, 0, 80, 25]).roomMm).toBe(0);
});
