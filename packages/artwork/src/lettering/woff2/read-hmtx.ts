import { ByteReader } from './byte-reader.ts';

/**
 * The table `hmtx` of a transformed one, which leaves out left bearings that are the least x of their glyphs.
 *
 * @param metrics how many glyphs have a width of their own
 * @see W3C WOFF File Format 2.0 (2022) §5.4
 */
export function readHmtx(table: Uint8Array, metrics: number, xMins: readonly number[]): Uint8Array {
  const from = new ByteReader(table);
  const flags = from.u8();
  const widths = Array.from({ length: metrics }, () => from.u16());
  const out = new Uint8Array(4 * metrics + 2 * Math.max(0, xMins.length - metrics));
  const to = new DataView(out.buffer);
  xMins.forEach((xMin, glyph) => {
    const isLeftOut = (flags & (glyph < metrics ? 0x01 : 0x02)) !== 0;
    const bearing = isLeftOut ? xMin : from.i16();
    if (glyph < metrics) {
      to.setUint16(4 * glyph, widths[glyph] as number);
      to.setInt16(4 * glyph + 2, bearing);
    } else {
      to.setInt16(4 * metrics + 2 * (glyph - metrics), bearing);
    }
  });
  return out;
}
