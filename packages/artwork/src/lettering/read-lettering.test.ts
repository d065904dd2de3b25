import { readFileSync } from 'node:fs';
import { type Drawing, perimeter, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { openFont } from './open-font.ts';
import { type LetteringOptions, readLettering } from './read-lettering.ts';

const bytes = (file: string): Uint8Array =>
  readFileSync(new URL(`../../../../fixtures/fonts/${file}`, import.meta.url));
const read = (file: string, text: string, options: Omit<LetteringOptions, 'font'>): Promise<Drawing> =>
  readLettering(text, { font: bytes(file), ...options });
const area = (drawing: Drawing): number =>
  drawing.shapes.reduce((sum, shape) => sum + Math.abs(signedArea(shape.region)), 0);
const codes = (drawing: Drawing): string[] => drawing.notices.map((n) => n.code);

test('areas scale with the square of the size, at any tolerance', async () => {
  const font = await openFont(bytes('lora-400.ttf'));
  const unit = area(await readLettering('Ragged Oak & 8', { font, capHeightMm: 1, toleranceMm: 1e-4 }));
  await fc.assert(
    fc.asyncProperty(
      fc.double({ min: 2, max: 200, noNaN: true }),
      fc.constantFrom(0.002, 0.005, 0.02),
      async (capHeightMm, toleranceMm) => {
        const sized = area(await readLettering('Ragged Oak & 8', { font, capHeightMm, toleranceMm }));
        expect(Math.abs(sized / (unit * capHeightMm * capHeightMm) - 1)).toBeLessThan(1e-9);
      },
    ),
    cases(20),
  );
});

test('turning letters on an arc keeps their areas', async () => {
  const straight = await read('arvo-400.ttf', 'Round about', { capHeightMm: 12 });
  const bent = await read('arvo-400.ttf', 'Round about', { capHeightMm: 12, arc: { radiusMm: 70 } });
  expect(bent.shapes).toHaveLength(straight.shapes.length);
  bent.shapes.forEach((shape, i) => {
    expect(signedArea(shape.region)).toBeCloseTo(signedArea(straight.shapes[i]!.region), 9);
  });
});

test('each glyph is a shape that is named by its letter, line and place', async () => {
  const { shapes, format } = await read('lora-400.ttf', 'Oak fin\nAsh', { capHeightMm: 10 });
  expect(format).toBe('lettering');
  expect(shapes.map((s) => s.source)).toEqual([
    'letter "O" (1st of line 1)',
    'letter "a" (2nd of line 1)',
    'letter "k" (3rd of line 1)',
    'letters "fi" (4th of line 1)',
    'letter "n" (6th of line 1)',
    'letter "A" (1st of line 2)',
    'letter "s" (2nd of line 2)',
    'letter "h" (3rd of line 2)',
  ]);
  expect(new Set(shapes.map((s) => s.region.fillRule))).toEqual(new Set(['nonzero']));
});

test('letters of a right-to-left word are counted from its right end', async () => {
  const { shapes } = await read('frank-ruhl-libre-400.ttf', 'שלום', { capHeightMm: 10 });
  expect(shapes.map((s) => s.source.match(/\d../)?.[0])).toEqual(['4th', '3rd', '2nd', '1st']);
});

test('a variable font at a weight has the outlines of the static font of that weight', async () => {
  for (const wght of [100, 300, 400, 600, 700]) {
    const fixed = await read(`josefin-sans-${wght}.ttf`, 'Hand IlO', { capHeightMm: 20 });
    const moved = await read('josefin-sans-latin-variable.woff2', 'Hand IlO', {
      capHeightMm: 20,
      axes: { wght },
    });
    moved.shapes.forEach(({ region }, i) => {
      // static files round each point to whole units, of which the cap height has 702: half a unit each way all along the outline
      const bound = perimeter(region) * (20 / 702) * Math.SQRT1_2;
      expect(Math.abs(signedArea(region) - signedArea(fixed.shapes[i]!.region))).toBeLessThan(bound);
    });
  }
});

test('a WOFF file sets the same letters as the plain file of its family', async () => {
  const plain = await read('josefin-sans-100.ttf', 'Iggy', { capHeightMm: 20 });
  const woff = await read('josefin-sans-latin-100.woff', 'Iggy', { capHeightMm: 20 });
  const bound =
    plain.shapes.reduce((sum, { region }) => sum + perimeter(region), 0) * (20 / 702) * Math.SQRT1_2;
  expect(woff.shapes).toHaveLength(plain.shapes.length);
  expect(Math.abs(area(woff) - area(plain))).toBeLessThan(bound);
});

test.each([
  ['Oak 木', 'no letter for "木" (U+6728) in line 1.'],
  ['Oak\nx\u030a', 'no letter for "◌̊" (U+030A) in line 2.'],
  ['tea \u0007', 'no letter for (U+0007) in line 1.'],
  ['木木 ✓', 'no letter for "木" (U+6728) in line 1, "✓" (U+2713) in line 1.'],
])('a missing letter in %j is named', async (text, message) => {
  await expect(read('arvo-400.ttf', text, { capHeightMm: 10 })).rejects.toMatchObject({
    code: 'missing-glyph',
    message: expect.stringContaining(message),
    remedy: /./,
  });
});

test.each([
  [{ wdth: 80 }, 'font-axis-missing', 'wght 100–700'],
  [{ wght: 900 }, 'font-axis-range', 'wght 100–700'],
  [{ wght: Number.NaN }, 'font-axis-range', 'wght 100–700'],
])('axes %j are refused with what the font has', async (axes, code, remedy) => {
  const options = { capHeightMm: 10, axes };
  await expect(read('josefin-sans-latin-variable.woff2', 'a', options)).rejects.toMatchObject({
    code,
    remedy: expect.stringContaining(remedy),
  });
});

test('a font without axes says so', async () => {
  await expect(read('arvo-400.ttf', 'a', { capHeightMm: 10, axes: { wght: 400 } })).rejects.toMatchObject({
    code: 'font-axis-missing',
    remedy: expect.stringContaining('not a variable font'),
  });
});

test('ordinary lettering needs no notice', async () => {
  expect(codes(await read('lora-400.ttf', 'Très bien, naïve Oak!', { capHeightMm: 10 }))).toEqual([]);
  expect(codes(await read('amiri-arabic-400.woff2', 'سَلام', { widthMm: 50 }))).toEqual([]);
});

test('what the font cannot set right is noticed, with its place', async () => {
  const loose = await read('lora-400.ttf', 'a %\u0301', { capHeightMm: 10 });
  expect(loose.notices).toEqual([
    expect.objectContaining({ code: 'lettering-loose-mark', severity: 'caution' }),
  ]);
  expect(loose.notices[0]!.where[0]!.element).toBe('"%\u0301" in line 1');
  expect(codes(await read('lora-400.ttf', 'a\tb', { capHeightMm: 10 }))).toEqual(['lettering-tab']);
});

test.each([
  ['amiri-arabic-400.woff2', 'بيت', { trackingMm: 3 }, 2],
  // its letters overlap by more than this at 25 mm cap height, so they still join
  ['amiri-arabic-400.woff2', 'بيت', { trackingMm: 1 }, 0],
  ['dancing-script-400.ttf', 'and', { trackingMm: 2 }, 2],
  ['dancing-script-400.ttf', 'and', { trackingMm: -0.2 }, 0],
  ['dancing-script-400.ttf', 'and', { arc: { radiusMm: 300 } }, 0],
  ['amiri-arabic-400.woff2', 'سلام', { arc: { radiusMm: 300 } }, 0],
  ['hind-devanagari-400.woff2', 'हम', { trackingMm: 3 }, 1],
  ['lora-400.ttf', 'Oak and Elm', { trackingMm: 3 }, 0],
  ['lora-400.ttf', 'Oak and Elm', { arc: { radiusMm: 40 } }, 0],
] as const)(
  'joins in %s "%s" with %j that are lost are noticed, and no others',
  async (file, text, options, lost) => {
    const { notices } = await read(file, text, { widthMm: 50, ...options });
    const notice = notices.find((n) => n.code === 'lettering-joins-apart');
    expect(notice?.where.length ?? 0).toBe(lost);
  },
);

test('a stated cap height that the H does not keep is noticed', async () => {
  const { notices, scaleSource } = await read('josefin-sans-700.ttf', 'H', { capHeightMm: 10 });
  // 736 units of H against 702 stated, as the font file has them
  expect(notices[0]!.text.mm).toContain('1.048');
  expect(scaleSource.mm).toBe('cap height 10 mm, as the font states it');
});

test('a font without OS/2 heights takes the cap height from its H', async () => {
  const font = bytes('arvo-400.ttf').slice();
  const view = new DataView(font.buffer);
  for (let row = 12; ; row += 16) {
    if (String.fromCharCode(...font.subarray(row, row + 4)) === 'OS/2') {
      // version 1 ends before the heights
      view.setUint16(view.getUint32(row + 8), 1);
      break;
    }
  }
  const drawing = await readLettering('H', { font, capHeightMm: 10 });
  expect(drawing.scaleSource.mm).toBe('cap height 10 mm, measured on the H');
  expect(Math.max(...drawing.shapes[0]!.region.coords)).toBeLessThan(10.5);
});

test('a tolerance of nothing is a misuse', async () => {
  await expect(read('arvo-400.ttf', 'a', { capHeightMm: 10, toleranceMm: 0 })).rejects.toThrow(RangeError);
});

test('a font whose letters are lines there and back is refused with the way out', async () => {
  const font = flattenGlyphs(bytes('arvo-400.ttf'));
  await expect(readLettering('Oak', { font, capHeightMm: 10 })).rejects.toMatchObject({
    code: 'font-single-line',
    remedy: expect.stringContaining('single-line'),
  });
});

/** The font with each glyph replaced by one contour of three points, up a line and back: (0,0) (0,1000) (0,500). */
function flattenGlyphs(font: Uint8Array): Uint8Array {
  const view = new DataView(font.buffer, font.byteOffset);
  const tables = new Map<string, { row: number; at: number; length: number }>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const row = 12 + 16 * i;
    tables.set(String.fromCharCode(...font.subarray(row, row + 4)), {
      row,
      at: view.getUint32(row + 8),
      length: view.getUint32(row + 12),
    });
  }
  // numberOfContours 1, box, endPts [2], no instructions, three on-curve points with 16-bit y deltas and unchanged x
  const words = [1, 0, 0, 0, 1000, 2, 0].flatMap((w) => [w >> 8, w & 255]);
  const glyph = [...words, 0x11, 0x11, 0x11, ...[0, 1000, -500].flatMap((w) => [(w >> 8) & 255, w & 255]), 0];
  const out = font.slice();
  const to = new DataView(out.buffer);
  const glyf = tables.get('glyf')!;
  out.set(glyph, glyf.at);
  to.setUint32(glyf.row + 12, glyph.length);
  const long = view.getInt16(tables.get('head')!.at + 50) === 1;
  const loca = tables.get('loca')!;
  // all glyphs are the first: offsets 0, length, 0, length … so that every other glyph is drawn and the rest is blank
  for (let i = 0; i * (long ? 4 : 2) < loca.length; i++) {
    const offset = i % 2 === 0 ? 0 : glyph.length;
    if (long) {
      to.setUint32(loca.at + 4 * i, offset);
    } else {
      to.setUint16(loca.at + 2 * i, offset / 2);
    }
  }
  return out;
}
