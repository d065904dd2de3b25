import type { FontReader } from './gpos-pairs.ts';

/** A point of a TrueType contour in font units, y up. */
export interface GlyfPoint {
  readonly x: number;
  readonly y: number;
  readonly onCurve: boolean;
}

/**
 * Contours of a simple glyph, read from the `glyf` table as the standard prints it.
 *
 * @see OpenType 1.9.1, "glyf — Glyph Data", simple glyph description
 */
export function glyfContours(font: FontReader, glyph: number): GlyfPoint[][] {
  const long = font.u16(font.table('head') + 50) === 1;
  const loca = font.table('loca');
  const offset = long ? font.data.getUint32(loca + 4 * glyph) : 2 * font.u16(loca + 2 * glyph);
  const start = font.table('glyf') + offset;
  const contours = font.data.getInt16(start);
  if (contours < 0) {
    throw new Error('this reader takes simple glyphs only');
  }
  const ends = Array.from({ length: contours }, (_, i) => font.u16(start + 10 + 2 * i));
  const count = (ends.at(-1) ?? -1) + 1;
  let at = start + 10 + 2 * contours;
  at += 2 + font.u16(at);
  const flags: number[] = [];
  while (flags.length < count) {
    const flag = font.data.getUint8(at++);
    flags.push(flag);
    // bit 3: the flag is repeated as often as the next byte says
    for (let repeats = flag & 8 ? font.data.getUint8(at++) : 0; repeats > 0; repeats--) {
      flags.push(flag);
    }
  }
  // bits 1 and 2: x or y is one byte; bits 4 and 5: its sign then, and "unchanged" otherwise
  const read = (short: number, same: number): number[] => {
    let value = 0;
    return flags.map((flag) => {
      if (flag & short) {
        value += (flag & same ? 1 : -1) * font.data.getUint8(at++);
      } else if (!(flag & same)) {
        value += font.data.getInt16(at);
        at += 2;
      }
      return value;
    });
  };
  const xs = read(2, 16);
  const ys = read(4, 32);
  return ends.map((end, i) => {
    const from = i === 0 ? 0 : ends[i - 1]! + 1;
    return flags
      .slice(from, end + 1)
      .map((flag, k) => ({ x: xs[from + k]!, y: ys[from + k]!, onCurve: (flag & 1) !== 0 }));
  });
}

/** Where the upright edges of a glyph stand that pass the height `y`, from left to right, in font units. */
export function uprightEdges(contours: readonly (readonly GlyfPoint[])[], y: number): number[] {
  const places: number[] = [];
  for (const contour of contours) {
    contour.forEach((p, i) => {
      const q = contour[(i + 1) % contour.length]!;
      if (p.onCurve && q.onCurve && p.x === q.x && (p.y - y) * (q.y - y) < 0) {
        places.push(p.x);
      }
    });
  }
  return places.sort((a, b) => a - b);
}
