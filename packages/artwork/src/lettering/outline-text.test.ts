import { readFileSync } from 'node:fs';
import {
  applyTransform,
  type Bounds,
  compose,
  EMPTY_BOUNDS,
  joinBounds,
  ringsBounds,
  rotation,
  signedArea,
  translation,
} from '@pourproof/plane';
import { expect, test } from 'vitest';
import type { LetteringFont } from './lettering-font.ts';
import { openFont } from './open-font.ts';
import type { OutlineTextOptions } from './outlined-text.ts';
import { readLettering } from './read-lettering.ts';

async function font(file: string): Promise<LetteringFont> {
  return openFont(readFileSync(new URL(`../../../../fixtures/fonts/${file}`, import.meta.url)));
}

const lora = await font('lora-400.ttf');
const hebrew = await font('frank-ruhl-libre-400.ttf');
const plain: OutlineTextOptions = { emSize: 24, toMm: [1, 0, 0, 1, 0, 0] };

const box = (face: LetteringFont, text: string, options: OutlineTextOptions): Bounds =>
  face
    .outlineText(text, options)
    .glyphs.map((g) => ringsBounds(g.region))
    .reduce(joinBounds, EMPTY_BOUNDS);

test('a run has the shapes of lettering at the same size', async () => {
  const run = lora.outlineText('Vatic fig', plain);
  const lettering = await readLettering('Vatic fig', { font: lora, capHeightMm: 24 * lora.capHeightEm! });
  expect(run.glyphs).toHaveLength(lettering.shapes.length);
  const [dx, dy] = [run.glyphs[0]!, lettering.shapes[0]!]
    .map((s) => s.region.coords.slice(0, 2))
    .reduce((a, b) => a.map((v, i) => b[i]! - v)) as unknown as [number, number];
  run.glyphs.forEach(({ region }, i) => {
    region.coords.forEach((v, k) => {
      expect(lettering.shapes[i]!.region.coords[k]! - (k % 2 === 0 ? dx : dy)).toBeCloseTo(v, 9);
    });
  });
});

test('a run sits on its baseline and starts at its origin', () => {
  const [minX, minY, , maxY] = box(lora, 'H', plain);
  expect(maxY).toBeCloseTo(0, 9);
  expect(minY).toBeCloseTo(-24 * lora.capHeightEm!, 9);
  // left side bearing of Lora's H: 55 of 1000 units
  expect(minX).toBeCloseTo((24 * 55) / 1000, 9);
});

test('anchors move the run by its length, from the right end for Hebrew', () => {
  const { advance } = lora.outlineText('Oak', plain);
  const [start] = box(lora, 'Oak', plain);
  expect(start - box(lora, 'Oak', { ...plain, anchor: 'middle' })[0]).toBeCloseTo(advance / 2, 9);
  expect(start - box(lora, 'Oak', { ...plain, anchor: 'end' })[0]).toBeCloseTo(advance, 9);
  expect(box(hebrew, 'שלום', plain)[2]).toBeLessThan(0.1);
  expect(box(hebrew, 'שלום', { ...plain, anchor: 'end' })[0]).toBeGreaterThan(-0.1);
});

test('letter and word spacing are added to the run', () => {
  const none = lora.outlineText('a b', plain).advance;
  expect(lora.outlineText('a b', { ...plain, letterSpacing: 2 }).advance).toBeCloseTo(none + 6, 9);
  expect(lora.outlineText('a b', { ...plain, wordSpacing: 5 }).advance).toBeCloseTo(none + 5, 9);
});

test('a map to mm may turn, stretch and mirror', () => {
  const toMm = [0.5, 2, -3, 0.25, 10, -4] as const;
  const before = lora.outlineText('Quay', { ...plain, toleranceMm: 1e-4 }).glyphs;
  const after = lora.outlineText('Quay', { ...plain, toMm, toleranceMm: 1e-4 }).glyphs;
  after.forEach(({ region }, i) => {
    const factor = 0.5 * 0.25 + 2 * 3;
    const expected = signedArea(before[i]!.region) * factor;
    expect(Math.abs(signedArea(region) / expected - 1)).toBeLessThan(1e-9);
    const first = applyTransform(toMm, [before[i]!.region.coords[0]!, before[i]!.region.coords[1]!]);
    expect(Math.hypot(region.coords[0]! - first[0], region.coords[1]! - first[1])).toBeLessThan(1e-9);
  });
});

test('each glyph says which characters it stands for', () => {
  const { glyphs } = lora.outlineText('a fig', plain);
  expect(glyphs.map((g) => `${g.index}${g.text}`)).toEqual(['0a', '2fi', '4g']);
});

test('blank text gives nothing, a missing letter is refused', () => {
  expect(lora.outlineText('', plain)).toEqual({ glyphs: [], advance: 0, letters: 0, looseMarks: false });
  expect(lora.outlineText(' ', plain).glyphs).toEqual([]);
  expect(() => lora.outlineText('木', plain)).toThrow(expect.objectContaining({ code: 'missing-glyph' }));
  expect(lora.outlineText('%\u0301', plain).looseMarks).toBe(true);
});

test('letters can be moved one by one, and left out', () => {
  const straight = lora.outlineText('a fib', plain);
  const starts: number[] = [];
  const moved = lora.outlineText('a fib', {
    ...plain,
    moveLetter: (letter) => {
      starts.push(letter.x);
      // a fresh start for the ligature, and b left out
      return letter.index === 4 ? null : translation(letter.index === 2 ? 100 - letter.x : 0, 0);
    },
  });
  expect(starts[0]).toBeCloseTo(0, 12);
  expect(moved.glyphs.map((g) => g.text)).toEqual(['a', 'fi']);
  expect(moved.advance).toBe(straight.advance);
  expect(moved.glyphs[0]).toEqual(straight.glyphs[0]);
  const shift = moved.glyphs[1]!.region.coords[0]! - straight.glyphs[1]!.region.coords[0]!;
  expect(shift).toBeCloseTo(100 - starts[2]!, 9);
});

test('moves along a circle put each letter on it, as text along a path', () => {
  const radius = 200;
  const { glyphs } = lora.outlineText('IIIII', {
    ...plain,
    moveLetter: ({ x, advance }) => {
      const middle = x + advance / 2;
      const angle = middle / radius;
      const foot = translation(radius * Math.sin(angle), -radius * Math.cos(angle));
      return compose(compose(foot, rotation(angle)), translation(-middle, 0));
    },
  });
  for (const { region } of glyphs) {
    const distances = Array.from({ length: region.coords.length / 2 }, (_, i) =>
      Math.hypot(region.coords[2 * i]!, region.coords[2 * i + 1]!),
    );
    // feet on the circle, half a letter aside a little above it; heads a cap height out
    expect(Math.min(...distances)).toBeGreaterThan(radius - 1e-9);
    expect(Math.min(...distances)).toBeLessThan(radius + 0.1);
    expect(Math.max(...distances)).toBeLessThan(radius + 24 * lora.capHeightEm! + 0.2);
  }
});

test('an em larger than any board is refused, through whatever maps it comes', () => {
  const error = expect.objectContaining({ code: 'lettering-size' });
  const big = { emSize: 30, toMm: [1000, 0, 0, 1000, 0, 0] as const };
  expect(() => lora.outlineText('A', big)).toThrow(error);
  expect(() => lora.outlineText('A', { ...big, toMm: [1, 0, 0, 1, 0, 0], unitMm: 1000 })).toThrow(error);
  expect(lora.outlineText('A', { ...big, unitMm: 1e-3 }).glyphs).toHaveLength(1);
  expect(lora.outlineText('  ', big).glyphs).toEqual([]);
});
