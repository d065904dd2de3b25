import { readFileSync } from 'node:fs';
import { openFont } from '@pourproof/artwork';
import { expect, test } from 'vitest';
import { FontReader, gposKerning, kernTableKerning } from '../../support/fonts/gpos-pairs.ts';

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz.,-'];

test.each([
  ['lora-400.ttf', gposKerning, 1000],
  ['bodoni-moda-400.ttf', gposKerning, 2000],
  ['dancing-script-400.ttf', gposKerning, 1000],
  ['josefin-sans-400.ttf', gposKerning, 1000],
  ['junction-400.otf', gposKerning, 1000],
  ['arvo-400.ttf', kernTableKerning, 2048],
] as const)(
  'every pair of letters in %s comes as close as the font says',
  async (file, kerning, unitsPerEm) => {
    const bytes = new Uint8Array(readFileSync(new URL(`../../../fixtures/fonts/${file}`, import.meta.url)));
    const table = new FontReader(bytes);
    expect(table.u16(table.table('head') + 18)).toBe(unitsPerEm);
    const font = await openFont(bytes);
    // one unit of the drawing is one of the font; forms that change by their neighbours are off, kerning stays
    const features = ['-liga', '-clig', '-calt', '-ccmp', '-rlig', '-locl'];
    const advance = (text: string): number =>
      font.outlineText(text, { emSize: unitsPerEm, toMm: [1, 0, 0, 1, 0, 0], features, toleranceMm: 100 })
        .advance;
    const single = new Map(LETTERS.map((c) => [c, advance(c)]));
    let kerned = 0;
    for (const left of LETTERS) {
      for (const right of LETTERS) {
        const expected = kerning(table, table.glyph(left), table.glyph(right));
        kerned += expected === 0 ? 0 : 1;
        const moved = advance(left + right) - single.get(left)! - single.get(right)!;
        expect(moved, left + right).toBeCloseTo(expected, 6);
      }
    }
    // so that the table was truly read
    expect(kerned).toBeGreaterThan(40);
  },
);
