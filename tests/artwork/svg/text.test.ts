import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { resolveRegions } from '@pourproof/arrangement';
import { openFont, readSvg } from '@pourproof/artwork';
import { perimeter, ringsBounds, signedArea } from '@pourproof/plane';
import { Resvg } from '@resvg/resvg-js';
import { expect, test } from 'vitest';

const FONT_FILE = new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url);
const font = await openFont(readFileSync(FONT_FILE));

function page(body: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100" font-family="Lora">${body}</svg>`;
}

const CASES = {
  'plain words': '<text x="10" y="60" font-size="30">Harbour</text>',
  'words from the middle': '<text x="100" y="60" font-size="30" text-anchor="middle">Harbour</text>',
  'words from the end': '<text x="190" y="60" font-size="30" text-anchor="end">Harbour</text>',
  'spans of another size':
    '<text x="10" y="60" font-size="24">Oak <tspan font-size="36" dy="5">Ash</tspan> Elm</text>',
  'a place for each letter': '<text x="10 60 120" y="60 40 80" font-size="40">ABC</text>',
  'stretched lines of white space': '<text x="10" y="60" font-size="30">\n    two\n    words\n  </text>',
  'letter spacing': '<text x="10" y="60" font-size="30" letter-spacing="3">spaced</text>',
  'stroked outlines':
    '<text x="10" y="60" font-size="40" fill="none" stroke="black" stroke-width="2">Rim</text>',
  'a text path':
    '<path id="p" d="M10 80A150 150 0 0 1 190 80" fill="none"/><text font-size="20"><textPath href="#p" startOffset="20">round the bend</textPath></text>',
  'letters turned one by one, the last turn going on':
    '<text x="20" y="60" font-size="30" rotate="20 -15 0 40">TURNED</text>',
  'a span turned within a turned text':
    '<text x="20" y="60" font-size="30" rotate="15">OH<tspan rotate="-30">NO</tspan>OH</text>',
  'words spaced out to a length': '<text x="10" y="60" font-size="30" textLength="170">WOODEN</text>',
  'letters stretched to a length':
    '<text x="10" y="60" font-size="30" textLength="170" lengthAdjust="spacingAndGlyphs">WOODEN</text>',
  'letters narrowed from the end':
    '<text x="190" y="60" font-size="40" text-anchor="end" textLength="90" lengthAdjust="spacingAndGlyphs">HOUSE</text>',
  'a clip of letters':
    '<clipPath id="c"><text x="10" y="70" font-size="60">WOOD</text></clipPath><rect width="200" height="60" clip-path="url(#c)"/>',
};

test.each(Object.entries(CASES))('sets %s as a renderer does', (_, body) => {
  const drawing = readSvg(page(body), { fonts: [font] });
  const { region } = resolveRegions(drawing.shapes.map((shape) => shape.region));
  expect(drawing.notices).toEqual([]);
  const image = new Resvg(page(body), {
    fitTo: { mode: 'width', value: 1200 },
    font: { fontFiles: [fileURLToPath(FONT_FILE)], loadSystemFonts: false },
  }).render();
  const { pixels, width } = image;
  const pixelMm = 200 / width;
  let sum = 0;
  const box = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 3; i < pixels.length; i += 4) {
    sum += pixels[i];
    if (pixels[i] > 127) {
      const x = ((i - 3) / 4) % width;
      const y = Math.floor((i - 3) / 4 / width);
      box[0] = Math.min(box[0], x);
      box[1] = Math.min(box[1], y);
      box[2] = Math.max(box[2], x + 1);
      box[3] = Math.max(box[3], y + 1);
    }
  }
  // coverage in steps of a quarter pixel averages out along the edges; places of letters to a pixel and the hinting of advances
  expect(Math.abs(signedArea(region) - (sum / 255) * pixelMm ** 2)).toBeLessThan(
    (perimeter(region) * pixelMm) / 8,
  );
  ringsBounds(region).forEach((value, i) => {
    expect(Math.abs(value - box[i] * pixelMm), `bound ${i}`).toBeLessThan(3 * pixelMm);
  });
});

test('a family that is not at hand is set in the font given, and said', () => {
  const drawing = readSvg(page('<text y="50" font-family="Nowhere Sans">Hi</text>'), { fonts: [font] });
  expect(drawing.shapes).toHaveLength(2);
  expect(drawing.notices.map((notice) => notice.code)).toContain('text-in-given-font');
});

test('a letter that the font lacks is an error that names it and its line', () => {
  expect(() => readSvg(page('\n<text y="50">漢</text>'), { fonts: [font] })).toThrow(
    expect.objectContaining({ code: 'missing-glyph', line: 2, message: expect.stringContaining('漢') }),
  );
});

test('letters larger than any board are refused, however the drawing scales them', () => {
  const scaled = (size: number, scale: number): string =>
    page(`<g transform="scale(${scale})"><text font-size="${size}">A</text></g>`);
  for (const [size, scale] of [
    [30_000, 1],
    [30, 1000],
    [1e300, 1],
  ] as const) {
    expect(() => readSvg(scaled(size, scale), { fonts: [font] })).toThrow(
      expect.objectContaining({ code: 'lettering-size', line: 1 }),
    );
  }
  expect(readSvg(scaled(30_000, 1 / 1000), { fonts: [font] }).shapes).toHaveLength(1);
});

test('a span with a length of its own is as long as that, and what follows stands behind it', () => {
  const drawing = readSvg(
    page('<text x="10" y="60" font-size="20">I<tspan textLength="100">III</tspan>I</text>'),
    { fonts: [font] },
  );
  expect(drawing.notices).toEqual([]);
  const lefts = drawing.shapes.map(({ region }) => ringsBounds(region)[0]);
  const plain = readSvg(page('<text x="10" y="60" font-size="20">II</text>'), { fonts: [font] });
  const [a, b] = plain.shapes.map(({ region }) => ringsBounds(region)[0]);
  const advance = b! - a!;
  // 100 from the start of the span to the end of its last letter, so its three letters are (100 − advance)/2 apart
  const expected = [0, advance, advance + (100 - advance) / 2, 100, advance + 100].map((x) => a! + x);
  lefts.forEach((left, i) => {
    expect(Math.abs(left - expected[i]!), `letter ${i}`).toBeLessThan(1e-6);
  });
});

test('words pressed together about their middle reach as far to both sides', () => {
  // by the specification's steps the anchor comes after the length, whose last letter has no room behind it
  const outer = (text: string): readonly number[] => {
    const { shapes } = readSvg(page(text), { fonts: [font] });
    const boxes = shapes.map(({ region }) => ringsBounds(region));
    return [boxes[0]![0], boxes.at(-1)![2]];
  };
  const pressed = outer(
    '<text x="100" y="60" font-size="30" text-anchor="middle" textLength="60">HOUSE</text>',
  );
  const [left] = outer('<text x="70" y="60" font-size="30">H</text>');
  const [, right] = outer('<text x="130" y="60" font-size="30" text-anchor="end">E</text>');
  expect(Math.abs(pressed[0]! - left!)).toBeLessThan(1e-6);
  expect(Math.abs(pressed[1]! - right!)).toBeLessThan(1e-6);
});

test.each([
  ['a length for letters placed one by one', '<text x="10 40" y="50" textLength="90">AB</text>'],
  ['a length within a length', '<text y="50" textLength="90">A<tspan textLength="20">BC</tspan></text>'],
])('%s is not followed, and said', (_, body) => {
  const { notices } = readSvg(page(body), { fonts: [font] });
  expect(notices.map((notice) => notice.code)).toContain('text-simplified');
});
