import { readFileSync } from 'node:fs';
import { type Bounds, boundsOf, EMPTY_BOUNDS, joinBounds } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { glyphRings } from './glyph-outline.ts';
import { layOutText } from './lay-out-text.ts';
import type { LayoutOptions } from './layout-options.ts';
import { openFont } from './open-font.ts';
import { type OpenedFont, openedFont } from './opened-font.ts';
import type { Letter } from './place-lines.ts';

async function font(file: string): Promise<OpenedFont> {
  return openedFont(
    await openFont(readFileSync(new URL(`../../../../fixtures/fonts/${file}`, import.meta.url))),
  );
}

const bodoni = await font('bodoni-moda-400.ttf');
const script = await font('dancing-script-400.ttf');
const TOLERANCE = 0.002;

function boxOf(face: OpenedFont, letters: readonly Letter[]): Bounds {
  return letters
    .flatMap((letter) =>
      letter.cluster.glyphs.flatMap((g) => {
        const [a, b, c, d, e, f] = letter.emToMm;
        const map = [a, b, c, d, a * g.x + c * g.y + e, b * g.x + d * g.y + f] as const;
        return glyphRings(face, g.glyph, map, TOLERANCE).map((ring) => boundsOf(ring));
      }),
    )
    .reduce(joinBounds, EMPTY_BOUNDS);
}

const lineBox = (face: OpenedFont, text: string, options: LayoutOptions, line: number): Bounds =>
  boxOf(
    face,
    layOutText(face, text, options).letters.filter((letter) => letter.line === line),
  );

test('capitals are as tall as was asked for', () => {
  const [, top, , bottom] = boxOf(bodoni, layOutText(bodoni, 'HIE', { capHeightMm: 12.7 }).letters);
  expect(top).toBeCloseTo(0, 9);
  expect(bottom).toBeCloseTo(12.7, 9);
});

test('the widest line is as wide as was asked for, with any tracking, and starts at the origin', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('Oak', 'Ash &\nElm', 'jig\nWAVY', 'fi'),
      fc.double({ min: 10, max: 400, noNaN: true }),
      fc.double({ min: -0.02, max: 0.1, noNaN: true }),
      fc.constantFrom('left' as const, 'centre' as const, 'right' as const),
      (text, widthMm, tracking, align) => {
        const options = { widthMm, trackingMm: tracking * widthMm, align };
        const [minX, minY, maxX] = boxOf(bodoni, layOutText(bodoni, text, options).letters);
        // vertices of flattened curves may leave the curve by the tolerance
        expect(Math.abs(minX)).toBeLessThan(TOLERANCE);
        expect(Math.abs(minY)).toBeLessThan(TOLERANCE);
        expect(Math.abs(maxX - widthMm)).toBeLessThan(TOLERANCE);
      },
    ),
    cases(60),
  );
});

test.each([
  ['left', 0],
  ['centre', 1],
  ['right', 2],
] as const)('%s brings the visible edges of the lines together', (align, k) => {
  const text = 'Jot\nWAVY wood\n\nj';
  const options = { capHeightMm: 20, align };
  const places = [1, 2, 4].map((line) => {
    const [minX, , maxX] = lineBox(bodoni, text, options, line);
    return [minX, (minX + maxX) / 2, maxX][k]!;
  });
  expect(Math.max(...places) - Math.min(...places)).toBeLessThan(2 * TOLERANCE);
});

test('line spacing is a multiple of what the font states', () => {
  const top = (lineSpacing: number): number =>
    lineBox(bodoni, 'H\nH', { capHeightMm: 15, lineSpacing }, 2)[1];
  // ascender 2250, descender −800, capitals 1500 units, as the font file has them
  expect(top(1)).toBeCloseTo((15 * (2250 + 800)) / 1500, 9);
  expect(top(1.5)).toBeCloseTo(1.5 * top(1), 9);
});

test('tracking moves each letter on by its count and sets no ligature', () => {
  const plain = layOutText(script, 'wood', { capHeightMm: 10 }).letters;
  const wide = layOutText(script, 'wood', { capHeightMm: 10, trackingMm: 2 }).letters;
  wide.forEach((letter, i) => {
    expect(letter.emToMm[4] - plain[i]!.emToMm[4]).toBeCloseTo(2 * i, 9);
  });
});

test('every line break counts, blank lines at the end do not, and a tab is four spaces', () => {
  const lines = layOutText(bodoni, 'a\r\nb\nc\rd\u2028\te\n\n', { capHeightMm: 5 }).lines;
  expect(lines).toEqual(['a', 'b', 'c', 'd', '    e']);
});

test.each(['over', 'under'] as const)('letters on an arc stand with their feet on it, %s', (side) => {
  const radiusMm = 80;
  const { letters } = layOutText(bodoni, 'HIHI', { capHeightMm: 10, arc: { radiusMm, side } });
  for (const letter of letters) {
    const [a, b, , , x, y] = letter.emToMm;
    const half = (letter.cluster.advance * Math.hypot(a, b)) / 2;
    const foot = [x + (a / Math.hypot(a, b)) * half, y + (b / Math.hypot(a, b)) * half] as const;
    expect(Math.hypot(...foot)).toBeCloseTo(radiusMm, 9);
    // the baseline is the tangent there: at right angles to the radius
    expect(foot[0] * a + foot[1] * b).toBeCloseTo(0, 6);
    // upright at the middle: over stands above the centre, under below it
    expect(Math.sign(foot[1])).toBe(side === 'over' ? -1 : 1);
    expect(a).toBeGreaterThan(0);
  }
  const feet = letters.map((letter) => letter.emToMm[4]);
  expect([...feet].sort((p, q) => p - q)).toEqual(feet);
});

test('a wide arc is nearly straight: letters keep their distances', () => {
  const straight = layOutText(bodoni, 'Wave', { capHeightMm: 10 }).letters;
  const bent = layOutText(bodoni, 'Wave', { capHeightMm: 10, arc: { radiusMm: 1e6 } }).letters;
  const dx = bent[0]!.emToMm[4] - straight[0]!.emToMm[4];
  bent.forEach((letter, i) => {
    // sagitta of 40 mm on a radius of 1 km: 0.2 µm; turn of a letter: 20 µrad of 10 mm
    expect(Math.abs(letter.emToMm[4] - straight[i]!.emToMm[4] - dx)).toBeLessThan(1e-3);
    expect(Math.abs(letter.emToMm[5] + 1e6)).toBeLessThan(1e-3);
  });
});

test('the middle of the lettering lies where the arc was asked to have it, and later lines keep the centre', () => {
  const arc = { radiusMm: 60, atDeg: 0 };
  const { letters } = layOutText(bodoni, 'H\nH', { capHeightMm: 10, arc });
  // at 0 degrees, to the right of the centre, the top of the letter points right
  letters.forEach((letter) => {
    expect(letter.emToMm[2]).toBeGreaterThan(0);
    expect(letter.emToMm[0]).toBeCloseTo(0, 3);
  });
  const step = (10 * (2250 + 800)) / 1500;
  expect(letters[0]!.emToMm[4] - letters[1]!.emToMm[4]).toBeCloseTo(step, 2);
});

test.each([
  ['', { capHeightMm: 10 }, 'lettering-blank'],
  ['  \n', { capHeightMm: 10 }, 'lettering-blank'],
  ['abcdef', { widthMm: 10, trackingMm: 3 }, 'lettering-size'],
  ['oak', { capHeightMm: 1e6 }, 'lettering-size'],
  ['I', { widthMm: 1e7 }, 'lettering-size'],
  ['ab\ncd\nef', { capHeightMm: 10, arc: { radiusMm: 30 } }, 'lettering-arc-radius'],
  ['a', { capHeightMm: 10, arc: { radiusMm: Number.NaN } }, 'lettering-arc-radius'],
  ['a long line round a small circle', { capHeightMm: 10, arc: { radiusMm: 20 } }, 'lettering-arc-length'],
] as const)('%j with %j is refused with a remedy', (text, options, code) => {
  expect(() => layOutText(bodoni, text, options)).toThrow(
    expect.objectContaining({ name: 'ArtworkError', code, remedy: expect.stringMatching(/./) }),
  );
});

test.each([
  {},
  { capHeightMm: 10, widthMm: 20 },
  { capHeightMm: 0 },
  { widthMm: Number.POSITIVE_INFINITY },
  { capHeightMm: Number.NaN },
  { capHeightMm: 5, lineSpacing: 0 },
  { capHeightMm: 5, trackingMm: Number.NaN },
])('%j is a misuse', (options) => {
  expect(() => layOutText(bodoni, 'a', options)).toThrow(RangeError);
});

test('the line that finds no room on its circle is named', () => {
  expect(() => layOutText(bodoni, 'ab\ncd\nef', { capHeightMm: 10, arc: { radiusMm: 30 } })).toThrow(
    'Line 3 ',
  );
  expect(() =>
    layOutText(bodoni, 'a\nlong long long line', { capHeightMm: 9, arc: { radiusMm: 30 } }),
  ).toThrow('Line 2 is');
});
