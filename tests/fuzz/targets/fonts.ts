import { readFileSync } from 'node:fs';
import { openFont, readLettering } from '@pourproof/artwork';
import fc from 'fast-check';
import { checkDrawing } from '../check-drawing.ts';
import { type FuzzTarget, fuzzTarget, laterAnswerOf } from '../fuzz-target.ts';

const FILES = [
  'junction-400.otf',
  'arvo-400.ttf',
  'josefin-sans-latin-100.woff',
  'josefin-sans-latin-variable.woff2',
];
const fonts = FILES.map((name) => new Uint8Array(readFileSync(`fixtures/fonts/${name}`)));

/** Where a table of a plain font lies, by its place in the directory; the whole file for packed ones. */
function tableOf(bytes: Uint8Array, index: number): readonly [from: number, length: number] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const isPlain = [0x00010000, 0x4f54544f].includes(view.getUint32(0));
  const tables = isPlain ? view.getUint16(4) : 0;
  if (tables === 0) {
    return [0, bytes.length];
  }
  const at = 12 + 16 * (index % tables);
  return [view.getUint32(at + 8), view.getUint32(at + 12)];
}

const change = fc.record({
  table: fc.integer({ min: 0, max: 31 }),
  isDirectory: fc.oneof(
    { weight: 1, arbitrary: fc.constant(true) },
    { weight: 4, arbitrary: fc.constant(false) },
  ),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  // what is at the head of a table decides most
  isHead: fc.boolean(),
  word: fc.constantFrom(0, 1, 0xff, 0x7fff, 0x8000, 0xffff, 0x0100, 0x4000),
});

/** A font of the fixtures with words of its tables or of their directory changed, or cut short. */
const damagedFont = fc
  .tuple(
    // bytes of packed files lie under a checksum: most of their damage is told at once
    fc.constantFrom(0, 0, 0, 1, 1, 1, 2, 3),
    fc.array(change, { maxLength: 3 }),
    fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { freq: 30 }),
  )
  .map(([which, changes, end]) => {
    const bytes = fonts[which]!.slice();
    for (const { table, isDirectory, at, isHead, word } of changes) {
      const [from, length] = isDirectory ? [0, 300] : tableOf(fonts[which]!, table);
      const offset = from + Math.floor(at * Math.min(length, isHead ? 64 : length));
      bytes[offset] = word >> 8;
      bytes[offset + 1] = word & 255;
    }
    return end === null ? bytes : bytes.slice(0, Math.floor(end * bytes.length));
  });

/** Damaged fonts of four kinds of file, and words set in them: a drawing that holds together, or a refusal. */
export const damagedFonts: FuzzTarget = fuzzTarget(
  'fonts',
  { limitMs: 10_000, quick: 12 },
  fc.tuple(damagedFont, fc.constantFrom('Hag', 'Oak & Ash', 'fi', 'ÀÉ', 'A\nB', '٣')),
  async ([bytes, text]) => {
    const font = await laterAnswerOf(() => openFont(bytes));
    const drawing =
      font === null ? null : await laterAnswerOf(() => readLettering(text, { font, capHeightMm: 12 }));
    if (drawing !== null) {
      checkDrawing(drawing);
    }
  },
  'async',
);
