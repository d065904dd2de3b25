import { readdirSync, readFileSync } from 'node:fs';
import { ringArea } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { glyphInk, glyphRings } from './glyph-outline.ts';
import { openFont } from './open-font.ts';
import { type OpenedFont, openedFont } from './opened-font.ts';

const folder = new URL('../../../../fixtures/fonts/', import.meta.url);
const files = readdirSync(folder).filter((name) => /\.(ttf|otf|woff2?)$/.test(name));

/** Point of a Bézier curve of any degree by de Casteljau's construction. */
function pointAt(points: readonly number[][], t: number): number[] {
  let row = points;
  while (row.length > 1) {
    row = row.slice(1).map((p, i) => [0, 1].map((k) => row[i]![k]! * (1 - t) + p[k]! * t));
  }
  return row[0]!;
}

/** Pieces of a glyph in ems as lists of control points. */
function pieces(font: OpenedFont, glyph: number): number[][][] {
  const out: number[][][] = [];
  let at: number[] = [0, 0];
  let start: number[] = [0, 0];
  for (const { type, values } of font.shaped.glyphToJson(glyph)) {
    const points: number[][] = [];
    for (let i = 0; i < values.length; i += 2) {
      points.push([values[i]! / font.unitsPerEm, values[i + 1]! / font.unitsPerEm]);
    }
    if (type === 'M') {
      start = points[0]!;
    } else {
      out.push([at, ...(type === 'Z' ? [start] : points)]);
    }
    at = type === 'Z' ? start : points.at(-1)!;
  }
  return out;
}

/** ∮ x dy over a piece by Gauss–Legendre with 5 nodes, exact for the degree-5 integrand of a cubic. */
function greenArea(piece: readonly number[][]): number {
  const n = piece.length - 1;
  const slope = piece.slice(1).map((p, i) => [0, (p[1]! - piece[i]![1]!) * n]);
  const nodes = [
    [0.5, 128 / 225],
    ...[-1, 1].flatMap((s) => [
      [0.5 + (s / 6) * Math.sqrt(5 - 2 * Math.sqrt(10 / 7)), (322 + 13 * Math.sqrt(70)) / 900],
      [0.5 + (s / 6) * Math.sqrt(5 + 2 * Math.sqrt(10 / 7)), (322 - 13 * Math.sqrt(70)) / 900],
    ]),
  ];
  return nodes.reduce((sum, [t, w]) => sum + (w! / 2) * pointAt(piece, t!)[0]! * pointAt(slope, t!)[1]!, 0);
}

test.each(files)('every glyph of %s keeps the exact area of its curves', async (file) => {
  const font = openedFont(await openFont(readFileSync(new URL(file, folder))));
  const size = 20;
  for (let glyph = 0; glyph < 300; glyph++) {
    const rings = glyphRings(font, glyph, [size, 0, 0, -size, 7, 3], 0.01);
    const area = rings.reduce((sum, ring) => sum + ringArea(ring), 0);
    // fonts turn y up, so areas turn their sign with the mirroring map
    const exact = pieces(font, glyph).reduce((sum, piece) => sum + greenArea(piece), 0) * -size * size;
    expect(Math.abs(area - exact), `glyph ${glyph}`).toBeLessThan(1e-9 * size * size);
  }
});

test.each(files)('the box of a glyph of %s holds its curves and is no larger', async (file) => {
  const font = openedFont(await openFont(readFileSync(new URL(file, folder))));
  for (let glyph = 1; glyph < 300; glyph += 7) {
    const sampled = pieces(font, glyph).flatMap((piece) =>
      Array.from({ length: 65 }, (_, i) => pointAt(piece, i / 64)),
    );
    const box = glyphInk(font, glyph);
    expect(box === undefined).toBe(sampled.length === 0);
    if (box) {
      const xs = sampled.map((p) => p[0]!);
      const ys = sampled.map((p) => p[1]!);
      // 64 samples miss an extremum by no more than (1/128)² of a bend of about an em
      expect(Math.min(...xs) - box.minX).toBeGreaterThan(-1e-12);
      expect(Math.min(...xs) - box.minX).toBeLessThan(1e-4);
      expect(box.maxX - Math.max(...xs)).toBeGreaterThan(-1e-12);
      expect(box.maxX - Math.max(...xs)).toBeLessThan(1e-4);
      expect(Math.min(...ys) - box.minY).toBeGreaterThan(-1e-12);
      expect(Math.min(...ys) - box.minY).toBeLessThan(1e-4);
      expect(box.maxY - Math.max(...ys)).toBeGreaterThan(-1e-12);
      expect(box.maxY - Math.max(...ys)).toBeLessThan(1e-4);
    }
  }
});

test('rings repeat no point and hold at least three', async () => {
  const font = openedFont(await openFont(readFileSync(new URL('lora-400.ttf', folder))));
  for (let glyph = 0; glyph < 300; glyph++) {
    for (const ring of glyphRings(font, glyph, [20, 0, 0, -20, 0, 0], 0.005)) {
      expect(ring.length).toBeGreaterThanOrEqual(6);
      for (let i = 0; i < ring.length; i += 2) {
        const j = (i + 2) % ring.length;
        expect(ring[i] === ring[j] && ring[i + 1] === ring[j + 1]).toBe(false);
      }
    }
  }
});
