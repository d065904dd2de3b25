import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openFont } from './open-font.ts';

const bytes = (file: string): Uint8Array =>
  readFileSync(new URL(`../../../../fixtures/fonts/${file}`, import.meta.url));

// what the files' own name and OS/2 tables hold
test.each([
  ['lora-400.ttf', 'Lora Regular', 'Lora', 400],
  // its OS/2 table states 250, as fonts of weight 100 did for old systems
  ['josefin-sans-100.ttf', 'Josefin Sans Thin', 'Josefin Sans', 250],
  ['josefin-sans-700.ttf', 'Josefin Sans Bold', 'Josefin Sans', 700],
  ['junction-400.otf', 'Junction Regular', 'Junction', 400],
])('%s says who it is', async (file, name, family, weight) => {
  expect(await openFont(bytes(file))).toMatchObject({ name, family, weight, italic: false });
});

test('a variable font has its axes and the weight that was asked for', async () => {
  const font = await openFont(bytes('josefin-sans-latin-variable.woff2'), { axes: { wght: 250 } });
  expect(font.axes).toEqual([{ tag: 'wght', min: 100, default: 100, max: 700 }]);
  expect(font.weight).toBe(250);
});

test('an italic says so by its style bits', async () => {
  const font = bytes('lora-400.ttf').slice();
  const view = new DataView(font.buffer);
  for (let row = 12; ; row += 16) {
    if (String.fromCharCode(...font.subarray(row, row + 4)) === 'OS/2') {
      const at = view.getUint32(row + 8) + 62;
      view.setUint16(at, view.getUint16(at) | 1);
      break;
    }
  }
  expect((await openFont(font)).italic).toBe(true);
});

test('line height and cap height are those of the font’s tables, in ems', async () => {
  // Bodoni Moda: 2000 units, ascender 2250, descender −800, no gap, capitals 1500
  const font = await openFont(bytes('bodoni-moda-400.ttf'));
  expect(font.lineEm).toBeCloseTo(3050 / 2000, 12);
  expect(font.capHeightEm).toBeCloseTo(1500 / 2000, 12);
  expect(font.capHeightFrom).toBe('OS/2');
});
