import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { ArtworkError } from './artwork-error.ts';
import { artworkFormat } from './artwork-format.ts';
import { readDxf } from './dxf/read-dxf.ts';
import { openFont } from './lettering/open-font.ts';
import { readSvg } from './svg/read-svg.ts';

const lora = readFileSync(new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url));

function thrownBy(act: () => unknown): ArtworkError {
  try {
    act();
  } catch (error) {
    return error as ArtworkError;
  }
  throw new Error('nothing was thrown');
}

test('errors carry what their words are made from, as data', () => {
  const picture = new Uint8Array([0x89, 0x50, 0x4e, 0x47]);
  expect(thrownBy(() => artworkFormat(picture, 'sign.png')).parameters).toEqual({
    name: 'sign.png',
    format: 'png',
  });
  expect(thrownBy(() => readSvg('<html/>'))).toMatchObject({
    code: 'svg-not-svg',
    parameters: { root: 'html' },
  });
  expect(thrownBy(() => readDxf('AC1027'))).toMatchObject({ code: 'not-dxf', parameters: { found: 'dwg' } });
});

test('the error of a letter in a drawing keeps its parameters and gains the place of the text', async () => {
  const font = await openFont(lora);
  const svg = '<svg xmlns="http://www.w3.org/2000/svg">\n <text>Elm 木</text></svg>';
  expect(thrownBy(() => readSvg(svg, { fonts: [font] }))).toMatchObject({
    code: 'missing-glyph',
    message: expect.stringContaining('has no letter for "木" (U+6728) in line 1.'),
    parameters: { font: font.name, characters: [{ text: '木', line: 1 }] },
    line: 2,
  });
});
