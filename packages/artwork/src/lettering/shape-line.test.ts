import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Cluster } from './cluster.ts';
import { glyphInk } from './glyph-outline.ts';
import { openFont } from './open-font.ts';
import { type OpenedFont, openedFont } from './opened-font.ts';
import { shapeLine } from './shape-line.ts';
import type { ShapeOptions } from './shape-options.ts';

async function font(file: string): Promise<OpenedFont> {
  return openedFont(
    await openFont(readFileSync(new URL(`../../../../fixtures/fonts/${file}`, import.meta.url))),
  );
}

const lora = await font('lora-400.ttf');
const arvo = await font('arvo-400.ttf');
const hebrew = await font('frank-ruhl-libre-400.ttf');
const arabic = await font('amiri-arabic-400.woff2');

const seen = (line: string, clusters: readonly Cluster[]): string =>
  clusters.map((c) => line.slice(c.start, c.end)).join('');
const length = (f: OpenedFont, line: string, options?: ShapeOptions): number =>
  shapeLine(f, line, options).reduce((sum, c) => sum + c.advance, 0);

test('letters f and i become one ligature, and stay two without it', () => {
  expect(shapeLine(lora, 'fi')).toHaveLength(1);
  expect(shapeLine(lora, 'fi', { features: ['-liga'] })).toHaveLength(2);
});

test('AV comes closer by kerning in a font that kerns by GPOS and in one that has only the old table', () => {
  for (const face of [lora, arvo]) {
    expect(length(face, 'AV')).toBeLessThan(length(face, 'A') + length(face, 'V') - 0.02);
    expect(length(face, 'AV', { features: ['-kern'] })).toBeCloseTo(
      length(face, 'A') + length(face, 'V'),
      12,
    );
  }
});

test('Hebrew runs from right to left, numbers and Latin in it from left to right', () => {
  const line = 'שלום 12 ab';
  expect(seen(line, shapeLine(hebrew, line))).toBe('ab 12 םולש');
});

test('the base direction can be given', () => {
  const line = 'שלום ab';
  expect(seen(line, shapeLine(hebrew, line, { direction: 'rtl' }))).toBe('ab םולש');
  expect(seen(line, shapeLine(hebrew, line, { direction: 'ltr' }))).toBe('םולש ab');
});

test('brackets in Hebrew are mirrored', () => {
  const [last, , first] = shapeLine(hebrew, '(א)');
  const glyph = (text: string): number => shapeLine(hebrew, text, { direction: 'ltr' })[0]!.glyphs[0]!.glyph;
  expect(first!.glyphs[0]!.glyph).toBe(glyph(')'));
  expect(last!.glyphs[0]!.glyph).toBe(glyph('('));
});

test('Arabic letters take their joined forms', () => {
  // beh three times: first, middle and last form all differ from the letter alone
  const forms = new Set(shapeLine(arabic, 'ببب').map((c) => c.glyphs.map((g) => g.glyph).join()));
  const alone = shapeLine(arabic, 'ب')[0]!
    .glyphs.map((g) => g.glyph)
    .join();
  expect(forms.size).toBe(3);
  expect(forms.has(alone)).toBe(false);
});

test('a Hebrew vowel sits under the middle of its letter', () => {
  const [cluster] = shapeLine(hebrew, 'שָ');
  expect(cluster!.glyphs).toHaveLength(2);
  const boxes = cluster!.glyphs.map((g) => ({ g, box: glyphInk(hebrew, g.glyph)! }));
  const base = boxes.find(({ box }) => box.maxY > 0.3)!;
  const mark = boxes.find((b) => b !== base)!;
  const middle = (b: typeof base): number => b.g.x + (b.box.minX + b.box.maxX) / 2;
  expect(Math.abs(middle(mark) - middle(base))).toBeLessThan(0.08);
  expect(mark.g.y + mark.box.maxY).toBeLessThan(0);
});

test('a letter with a combining accent equals the accented letter', () => {
  expect(shapeLine(arvo, 'e\u0301').flatMap((c) => c.glyphs)).toEqual(
    shapeLine(arvo, 'é').flatMap((c) => c.glyphs),
  );
});

test('a mark that the font can place is not loose, one that it cannot is', () => {
  expect(shapeLine(hebrew, 'שָ')[0]!.looseMark).toBe(false);
  expect(shapeLine(lora, 'o\u0323')[0]!.looseMark).toBe(false);
  expect(shapeLine(lora, '%\u0301')[0]!.looseMark).toBe(true);
});

test('clusters tile the line', () => {
  const line = 'Hi שָׁלוֹם, fi e\u0301 12!';
  const spans = shapeLine(hebrew, line)
    .map((c) => [c.start, c.end])
    .sort((a, b) => a[0]! - b[0]!);
  expect(spans[0]![0]).toBe(0);
  expect(spans.at(-1)![1]).toBe(line.length);
  spans.slice(1).forEach(([start], i) => {
    expect(start).toBe(spans[i]![1]);
  });
});

test.each(['!', 'kerning', 'liga=off', ''])('"%s" is refused as a feature', (feature) => {
  expect(() => shapeLine(lora, 'a', { features: [feature] })).toThrow(RangeError);
});

test('Devanagari is put in order: short i before its letter, r over it, and letters that stack become one', async () => {
  const hindi = await font('hind-devanagari-400.woff2');
  // हि: the vowel is written after ह and stands before it
  const [hi] = shapeLine(hindi, 'हि');
  const plainHa = shapeLine(hindi, 'ह')[0]!.glyphs[0]!.glyph;
  expect(hi!.glyphs).toHaveLength(2);
  expect(hi!.glyphs[1]!.glyph).toBe(plainHa);
  // क + virama + ष is one sign
  expect(shapeLine(hindi, 'क्ष').flatMap((c) => c.glyphs)).toHaveLength(1);
  // र + virama + क: क stays plain, r becomes a hook above it
  const [rka] = shapeLine(hindi, 'र्क');
  expect(rka!.glyphs[0]!.glyph).toBe(shapeLine(hindi, 'क')[0]!.glyphs[0]!.glyph);
  const hook = glyphInk(hindi, rka!.glyphs[1]!.glyph)!;
  expect(rka!.glyphs[1]!.y + hook.minY).toBeGreaterThan(0.4);
  expect(shapeLine(hindi, 'हिन्दी क्षत्रिय र्कं कु').some((c) => c.looseMark)).toBe(false);
});
