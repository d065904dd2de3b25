import { view } from './unpack-font.ts';

/** Kerning by pairs: key `left glyph · 65536 + right glyph`, value in font units (negative = closer). */
export type KernPairs = ReadonlyMap<number, number>;

/**
 * Pair kerning of a font's `kern` table in font units, or an empty map when there is none.
 *
 * Many older free fonts kern by this table alone, and the build of HarfBuzz that runs in browsers leaves it
 * out. Taken are horizontal pair subtables (format 0) of both table versions; minimum, cross-stream and
 * state-table kerning are not. Later subtables add to earlier ones unless they say that they replace them.
 *
 * @see OpenType 1.9.1, "kern — Kerning"
 */
export function legacyKern(table: Uint8Array | undefined): KernPairs {
  const pairs = new Map<number, number>();
  if (!table || table.length < 4) {
    return pairs;
  }
  const data = view(table);
  const modern = data.getUint16(0) === 0;
  const count = modern ? data.getUint16(2) : table.length >= 8 ? data.getUint32(4) : 0;
  let at = modern ? 4 : 8;
  const header = modern ? 6 : 8;
  for (let i = 0; i < count && at + header + 8 <= table.length; i++) {
    const length = modern ? data.getUint16(at + 2) : data.getUint32(at);
    const coverage = data.getUint16(at + 4);
    const format = modern ? coverage >> 8 : coverage & 0xff;
    // version 0: bit 0 horizontal, 1 minimum, 2 cross-stream; version 1: bit 15 vertical, 14 cross-stream, 13
    // variation
    const plain = modern ? (coverage & 7) === 1 : coverage >> 13 === 0;
    if (format === 0 && plain) {
      addPairs(pairs, data, at + header, modern && (coverage & 8) !== 0);
    }
    // the 16-bit length of a large table overflows; such tables hold one subtable
    at += Math.max(length, header);
  }
  return pairs;
}

function addPairs(pairs: Map<number, number>, data: DataView, start: number, replace: boolean): void {
  const rows = Math.min(data.getUint16(start), Math.floor((data.byteLength - start - 8) / 6));
  for (let i = 0; i < rows; i++) {
    const row = start + 8 + 6 * i;
    const key = data.getUint32(row);
    const value = data.getInt16(row + 4);
    pairs.set(key, replace ? value : (pairs.get(key) ?? 0) + value);
  }
}
