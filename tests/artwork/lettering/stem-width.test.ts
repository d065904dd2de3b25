import { readFileSync } from 'node:fs';
import { resolveRegions } from '@pourproof/arrangement';
import { readLettering, readStickLettering } from '@pourproof/artwork';
import { medialAxis, strokeWidths } from '@pourproof/geometry';
import type { DrawnShape } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { glyfContours, uprightEdges } from '../../support/fonts/glyf-outline.ts';
import { FontReader } from '../../support/fonts/gpos-pairs.ts';

const TOLERANCE_MM = 0.01;

const widthsOf = (shapes: readonly DrawnShape[]) =>
  strokeWidths(medialAxis(resolveRegions(shapes.map((shape) => shape.region)).region));

/** Length of strokes that are as wide as `widthMm`, within 10 µm either way. */
function lengthOfWidth(shapes: readonly DrawnShape[], widthMm: number): number {
  const edges = [widthMm - TOLERANCE_MM, widthMm + TOLERANCE_MM];
  return widthsOf(shapes).histogram(edges)[0]!;
}

interface Stem {
  readonly bytes: Uint8Array;
  readonly widthUnits: number;
  readonly straightUnits: number;
  readonly capUnits: number;
}

/** The stem of capital I, from the points of its outline in the file. */
function stemOf(file: string): Stem {
  const bytes = new Uint8Array(readFileSync(new URL(`../../../fixtures/fonts/${file}`, import.meta.url)));
  const font = new FontReader(bytes);
  const contours = glyfContours(font, font.glyph('I'));
  // sCapHeight is at byte 88 of OS/2
  const capUnits = font.data.getInt16(font.table('OS/2') + 88);
  const [left, right] = uprightEdges(contours, capUnits / 2) as [number, number];
  const ys = contours
    .flat()
    .filter((p) => p.onCurve && (p.x === left || p.x === right))
    .map((p) => p.y);
  return {
    bytes,
    widthUnits: right - left,
    straightUnits: Math.max(...ys) - Math.min(...ys),
    capUnits,
  };
}

test.each([
  ['lora-400.ttf', 12],
  ['lora-400.ttf', 25.4],
  ['bodoni-moda-400.ttf', 20],
  ['arvo-400.ttf', 15],
  ['frank-ruhl-libre-400.ttf', 15],
  ['josefin-sans-100.ttf', 20],
  ['josefin-sans-400.ttf', 12],
  ['josefin-sans-700.ttf', 30],
])('the stem of capital I in %s at %d mm is as wide as its outline says', async (file, capHeightMm) => {
  const { bytes, widthUnits, straightUnits, capUnits } = stemOf(file);
  const { shapes } = await readLettering('I', { font: bytes, capHeightMm });
  const [widthMm, straightMm] = [widthUnits, straightUnits].map((u) => (u * capHeightMm) / capUnits) as [
    number,
    number,
  ];
  // the stem is that wide along its straight sides, less the rounding into its ends by up to half its width each
  expect(lengthOfWidth(shapes, widthMm)).toBeGreaterThan(straightMm - widthMm - 0.01);
  // and nothing but the flare into its feet is a little wider
  expect(lengthOfWidth(shapes, widthMm + 3 * TOLERANCE_MM)).toBeLessThan(0.15 * straightMm);
});

test.each(['josefin-sans-100.ttf', 'josefin-sans-400.ttf', 'josefin-sans-700.ttf'])(
  'the stem is the narrowest stroke of a capital I without serifs: %s',
  async (file) => {
    const { bytes, widthUnits, capUnits } = stemOf(file);
    const { shapes } = await readLettering('I', { font: bytes, capHeightMm: 18 });
    expect(Math.abs(widthsOf(shapes).narrowestMm! - (widthUnits * 18) / capUnits)).toBeLessThan(TOLERANCE_MM);
  },
);

test.each(['I', 'O', 'S', 'C', 'U', 's', 'l'])('single-line %s is as wide as the bit all along', (text) => {
  const strokeMm = 1.5875;
  const { shapes } = readStickLettering(text, { capHeightMm: 20, strokeMm });
  const widths = widthsOf(shapes);
  expect(Math.abs(widths.narrowestMm! - strokeMm)).toBeLessThan(TOLERANCE_MM);
  expect(lengthOfWidth(shapes, strokeMm)).toBeGreaterThan(0.999 * widths.lengthMm);
});
