import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ArtworkError, type LetteringFont, openFont } from '@pourproof/artwork';
import { perimeter } from '@pourproof/plane';
import { Resvg } from '@resvg/resvg-js';
import { expect, test } from 'vitest';

const folder = new URL('../../../fixtures/fonts/', import.meta.url);

/** Family names as the fonts state them, for the renderer. */
const FACES: Readonly<Record<string, { family: string; weight: number }>> = {
  'lora-400.ttf': { family: 'Lora', weight: 400 },
  'bodoni-moda-400.ttf': { family: 'Bodoni Moda', weight: 400 },
  'dancing-script-400.ttf': { family: 'Dancing Script', weight: 400 },
  'arvo-400.ttf': { family: 'Arvo', weight: 400 },
  'junction-400.otf': { family: 'Junction', weight: 400 },
  'frank-ruhl-libre-400.ttf': { family: 'Frank Ruhl Libre', weight: 400 },
  'josefin-sans-100.ttf': { family: 'Josefin Sans', weight: 100 },
  'josefin-sans-300.ttf': { family: 'Josefin Sans', weight: 300 },
  'josefin-sans-400.ttf': { family: 'Josefin Sans', weight: 400 },
  'josefin-sans-600.ttf': { family: 'Josefin Sans', weight: 600 },
  'josefin-sans-700.ttf': { family: 'Josefin Sans', weight: 700 },
};

interface Picture {
  readonly width: number;
  /** Ink of each pixel, 0–1. */
  readonly ink: Float64Array;
}

const EM = 96;

function render(body: string, width: number, file: string): Picture {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${2 * EM}"><rect width="100%" height="100%" fill="#fff"/>${body}</svg>`;
  const image = new Resvg(svg, {
    font: { fontFiles: [fileURLToPath(new URL(file, folder))], loadSystemFonts: false },
  }).render();
  // each reading of the property copies the picture
  const { pixels } = image;
  const ink = new Float64Array(image.width * image.height);
  for (let i = 0; i < ink.length; i++) {
    ink[i] = 1 - pixels[4 * i]! / 255;
  }
  return { width: image.width, ink };
}

function hasGlyph(font: LetteringFont, char: string): boolean {
  try {
    font.outlineText(char, { emSize: 1, toMm: [1, 0, 0, 1, 0, 0], toleranceMm: 1 });
    return true;
  } catch (error) {
    if (error instanceof ArtworkError && error.code === 'missing-glyph') {
      return false;
    }
    throw error;
  }
}

const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0);

/** Ink that differs, pixel by pixel. */
function difference(a: Picture, b: Picture): number {
  expect(b.ink.length).toBe(a.ink.length);
  return sum(a.ink.map((v, i) => Math.abs(v - b.ink[i]!)));
}

interface BothWays {
  readonly theirs: Picture;
  readonly ours: Picture;
  /** Length of our outlines in pixels. */
  readonly edge: number;
}

/** One picture by the renderer's own font engine, one of our outlines. */
async function bothWays(file: string, text: string): Promise<BothWays> {
  const font = await openFont(readFileSync(new URL(file, folder)));
  const { family, weight } = FACES[file]!;
  const hebrew = /\p{Script=Hebrew}/u.test(text);
  const run = font.outlineText(text, {
    emSize: EM,
    toMm: [1, 0, 0, 1, EM / 2, 1.3 * EM],
    toleranceMm: 0.01,
    // the renderer starts every run at its left end
    anchor: hebrew ? 'end' : 'start',
  });
  const width = Math.ceil(run.advance + EM);
  const escaped = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  const theirs = render(
    `<text x="${EM / 2}" y="${1.3 * EM}" font-size="${EM}" font-family="${family}" font-weight="${weight}" xml:space="preserve">${escaped}</text>`,
    width,
    file,
  );
  const data = run.glyphs.map(({ region }) => {
    let d = '';
    region.ringEnds.forEach((end, k) => {
      const from = k === 0 ? 0 : region.ringEnds[k - 1]!;
      d += `M${[...region.coords.subarray(2 * from, 2 * end)].map((v) => v.toFixed(4)).join(' ')}Z`;
    });
    return d;
  });
  // one path as the renderer makes of a run, so that overlapping letters of a script are one area in both
  const ours = render(`<path d="${data.join('')}"/>`, width, file);
  return { theirs, ours, edge: run.glyphs.reduce((length, { region }) => length + perimeter(region), 0) };
}

/**
 * Largest difference of ink for each pixel of outline. The rasteriser is the same in both pictures; it samples a pixel in quarters,
 * so an edge that comes in other pieces falls up to 1/8 px elsewhere. Half of that on average is 1/1536 of the em, less than a font unit.
 */
const EDGE_PX = 1 / 16;

test.each(Object.keys(FACES))(
  'a second font engine draws the printable characters of %s as we do',
  async (file) => {
    const font = await openFont(readFileSync(new URL(file, folder)));
    const chars = Array.from({ length: 0x2300 }, (_, code) => String.fromCodePoint(code))
      .filter((c) => /[\p{L}\p{N}\p{P}\p{S}]/u.test(c) && !/\p{Script=Hebrew}/u.test(c))
      .filter((c) => hasGlyph(font, c))
      .slice(0, 250);
    expect(chars.length).toBeGreaterThan(150);
    for (let i = 0; i < chars.length; i += 25) {
      // thin spaces between, so that no pair is a ligature; kerning is tried below
      const text = chars.slice(i, i + 25).join(' ');
      const { theirs, ours, edge } = await bothWays(file, text);
      expect(difference(theirs, ours) / edge, text).toBeLessThan(EDGE_PX);
      // such rounding goes both ways, except that level edges at one height round alike
      expect(Math.abs(sum(theirs.ink) - sum(ours.ink)) / edge, text).toBeLessThan(EDGE_PX / 2);
    }
  },
);

test.each([
  ['lora-400.ttf', 'AVATAR Toffee fjord, “Yew” & Wavy fir-tree'],
  ['arvo-400.ttf', 'AVATAR Toffee fjord, “Yew” & Wavy'],
  ['bodoni-moda-400.ttf', 'AVATAR Toffee fjord, Wavy office'],
  ['dancing-script-400.ttf', 'Handmade with joined letters'],
  ['junction-400.otf', 'AVATAR Toffee fjord, Wavy'],
  ['josefin-sans-400.ttf', 'AVATAR Toffee fjord, Wavy'],
  ['frank-ruhl-libre-400.ttf', 'שָׁלוֹם לַכֹּל'],
  ['lora-400.ttf', 'e\u0301 o\u0323 Å n\u0303'],
])(
  'a second shaping engine sets %s "%s" as we do: kerning, ligatures, order and marks',
  async (file, text) => {
    const { theirs, ours, edge } = await bothWays(file, text);
    expect(sum(theirs.ink)).toBeGreaterThan(EM);
    expect(difference(theirs, ours) / edge).toBeLessThan(EDGE_PX);
  },
);

test('the comparison notices one letter of a word that is a hundredth of an em off', async () => {
  const { theirs, edge } = await bothWays('lora-400.ttf', 'Oak');
  const [width, from] = [theirs.width, Math.round(theirs.width / 2)];
  const moved = theirs.ink.map((v, i) => (i % width > from ? theirs.ink[i - Math.round(EM / 100)]! : v));
  expect(difference(theirs, { ...theirs, ink: moved }) / edge).toBeGreaterThan(2 * EDGE_PX);
});
