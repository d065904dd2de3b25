import { applyTransform, type Transform } from '@pourproof/plane';
import { CubicFlattener } from '../flatten/cubic-flattener.ts';
import type { InkBox } from './ink-box.ts';
import type { OpenedFont } from './opened-font.ts';

/**
 * Rings of one glyph, flat `[x0,y0,…]` lists, after `emToMm` (from ems, y up, to mm, y down), flattened
 * without bias in area within `toleranceMm`. Rings turn as the font has them and may overlap; the fill rule
 * of fonts is non-zero. Blank glyphs have none.
 */
export function glyphRings(
  font: OpenedFont,
  glyph: number,
  emToMm: Transform,
  toleranceMm: number,
): number[][] {
  const curves = new CubicFlattener();
  const rings: number[][] = [];
  let ring: number[] = [];
  let x = 0;
  let y = 0;
  for (const { type, values } of font.shaped.glyphToJson(glyph)) {
    const p = mapped(values, emToMm, 1 / font.unitsPerEm);
    const [a, b, c, d, e, f] = p as [number, number, number, number, number, number];
    if (type === 'M') {
      pushRing(rings, ring);
      ring = [a, b];
    } else if (type === 'L') {
      ring.push(a, b);
    } else if (type === 'Q') {
      curves.quadratic(ring, x, y, a, b, c, d, toleranceMm);
    } else if (type === 'C') {
      curves.cubic(ring, x, y, a, b, c, d, e, f, toleranceMm);
    }
    if (p.length >= 2) {
      x = p.at(-2) as number;
      y = p.at(-1) as number;
    }
  }
  pushRing(rings, ring);
  return rings;
}

/** How many points join the lines and curves of a glyph. */
export function glyphNodes(font: OpenedFont, glyph: number): number {
  return font.shaped.glyphToJson(glyph).filter(({ type }) => type !== 'M' && type !== 'Z').length;
}

/** The exact box around a glyph's curves, or `undefined` for a blank glyph. */
export function glyphInk(font: OpenedFont, glyph: number): InkBox | undefined {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  let x = 0;
  let y = 0;
  for (const { values } of font.shaped.glyphToJson(glyph)) {
    if (values.length === 0) {
      continue;
    }
    const p = values.map((v) => v / font.unitsPerEm);
    const xs = [x, ...p.filter((_, i) => i % 2 === 0)];
    const ys = [y, ...p.filter((_, i) => i % 2 === 1)];
    // a move has one point, which the next piece starts from
    const [minX, maxX] = p.length === 2 ? [xs[1] as number, xs[1] as number] : extent(xs);
    const [minY, maxY] = p.length === 2 ? [ys[1] as number, ys[1] as number] : extent(ys);
    box.minX = Math.min(box.minX, minX);
    box.maxX = Math.max(box.maxX, maxX);
    box.minY = Math.min(box.minY, minY);
    box.maxY = Math.max(box.maxY, maxY);
    x = xs.at(-1) as number;
    y = ys.at(-1) as number;
  }
  return box.minX <= box.maxX ? box : undefined;
}

function mapped(values: readonly number[], map: Transform, scale: number): number[] {
  const out: number[] = [];
  for (let i = 0; i + 1 < values.length; i += 2) {
    out.push(...applyTransform(map, [(values[i] as number) * scale, (values[i + 1] as number) * scale]));
  }
  return out;
}

// fonts close contours by themselves and often repeat the first point
function pushRing(rings: number[][], ring: number[]): void {
  const clean: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const px = clean.at(-2);
    const py = clean.at(-1);
    if (px !== ring[i] || py !== ring[i + 1]) {
      clean.push(ring[i] as number, ring[i + 1] as number);
    }
  }
  while (clean.length > 2 && clean[0] === clean.at(-2) && clean[1] === clean.at(-1)) {
    clean.length -= 2;
  }
  if (clean.length >= 6) {
    rings.push(clean);
  }
}

/** Smallest and largest value of a Bézier curve of degree 2 or 3 in one coordinate. */
function extent(p: readonly number[]): [number, number] {
  const [p0, p1, p2, p3] = p as [number, number, number, number | undefined];
  const end = p3 ?? p2;
  let low = Math.min(p0, end);
  let high = Math.max(p0, end);
  // derivative a·t² + b·t + c, up to a factor
  const a = p3 === undefined ? 0 : p3 - 3 * p2 + 3 * p1 - p0;
  const b = p3 === undefined ? p2 - 2 * p1 + p0 : 2 * (p2 - 2 * p1 + p0);
  const c = p1 - p0;
  for (const t of quadraticRoots(a, b, c)) {
    if (t > 0 && t < 1) {
      const u = 1 - t;
      const value =
        p3 === undefined
          ? u * u * p0 + 2 * u * t * p1 + t * t * p2
          : u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  }
  return [low, high];
}

// the stable pair q/a and c/q, which also serves a = 0
function quadraticRoots(a: number, b: number, c: number): number[] {
  const root = Math.sqrt(b * b - 4 * a * c);
  if (Number.isNaN(root)) {
    return [];
  }
  const q = -(b + (b < 0 ? -root : root)) / 2;
  return [q / a, c / q].filter(Number.isFinite);
}
