/** Bytes of a font read as the OpenType standard prints its tables; all numbers are big-endian. */
export class FontReader {
  readonly data: DataView;

  constructor(bytes: Uint8Array) {
    this.data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  /** Offset of a table. */
  table(tag: string): number {
    for (let i = 0; i < this.data.getUint16(4); i++) {
      const row = 12 + 16 * i;
      if (this.ascii(row) === tag) {
        return this.data.getUint32(row + 8);
      }
    }
    throw new Error(`the font has no ${tag}`);
  }

  ascii(at: number): string {
    return [0, 1, 2, 3].map((k) => String.fromCharCode(this.data.getUint8(at + k))).join('');
  }

  u16(at: number): number {
    return this.data.getUint16(at);
  }

  /** Glyph of a character, by a format 4 subtable of cmap. */
  glyph(char: string): number {
    const code = char.charCodeAt(0);
    const cmap = this.table('cmap');
    for (let i = 0; i < this.u16(cmap + 2); i++) {
      const at = cmap + this.data.getUint32(cmap + 4 + 8 * i + 4);
      if (this.u16(at) === 4) {
        const segments = this.u16(at + 6) / 2;
        for (let k = 0; k < segments; k++) {
          const end = this.u16(at + 14 + 2 * k);
          const startAt = at + 16 + 2 * segments + 2 * k;
          if (code <= end) {
            const start = this.u16(startAt);
            const deltaAt = startAt + 2 * segments;
            const rangeAt = deltaAt + 2 * segments;
            if (code < start) {
              return 0;
            }
            const range = this.u16(rangeAt);
            const id = range === 0 ? code : this.u16(rangeAt + range + 2 * (code - start));
            return id === 0 ? 0 : (id + this.u16(deltaAt)) & 0xffff;
          }
        }
      }
    }
    return 0;
  }
}

/** Index of a glyph in a coverage table, or −1. */
function coverage(font: FontReader, at: number, glyph: number): number {
  const count = font.u16(at + 2);
  for (let i = 0; i < count; i++) {
    if (font.u16(at) === 1) {
      if (font.u16(at + 4 + 2 * i) === glyph) {
        return i;
      }
    } else {
      const row = at + 4 + 6 * i;
      if (glyph >= font.u16(row) && glyph <= font.u16(row + 2)) {
        return font.u16(row + 4) + glyph - font.u16(row);
      }
    }
  }
  return -1;
}

/** Class of a glyph in a class definition table. */
function glyphClass(font: FontReader, at: number, glyph: number): number {
  if (font.u16(at) === 1) {
    const i = glyph - font.u16(at + 2);
    return i >= 0 && i < font.u16(at + 4) ? font.u16(at + 6 + 2 * i) : 0;
  }
  for (let i = 0; i < font.u16(at + 2); i++) {
    const row = at + 4 + 6 * i;
    if (glyph >= font.u16(row) && glyph <= font.u16(row + 2)) {
      return font.u16(row + 4);
    }
  }
  return 0;
}

/** Lookups of the `kern` feature for the Latin script's default language, in their order. */
function kernLookups(font: FontReader, gpos: number): number[] {
  const scripts = gpos + font.u16(gpos + 4);
  const features = gpos + font.u16(gpos + 6);
  const lookups = gpos + font.u16(gpos + 8);
  const tags = Array.from({ length: font.u16(scripts) }, (_, i) => scripts + 2 + 6 * i);
  const row = tags.find((r) => font.ascii(r) === 'latn') ?? tags.find((r) => font.ascii(r) === 'DFLT')!;
  const script = scripts + font.u16(row + 4);
  const language = script + font.u16(script);
  const wanted = new Set<number>();
  for (let i = 0; i < font.u16(language + 4); i++) {
    const feature = features + 2 + 6 * font.u16(language + 6 + 2 * i);
    if (font.ascii(feature) === 'kern') {
      const at = features + font.u16(feature + 4);
      for (let k = 0; k < font.u16(at + 2); k++) {
        wanted.add(font.u16(at + 4 + 2 * k));
      }
    }
  }
  return [...wanted].sort((a, b) => a - b).map((i) => lookups + font.u16(lookups + 2 + 2 * i));
}

/** Change of the first glyph's advance by one pair subtable, or undefined when the pair is not in it. */
function pairValue(font: FontReader, at: number, left: number, right: number): number | undefined {
  const index = coverage(font, at + font.u16(at + 2), left);
  const [first, second] = [font.u16(at + 4), font.u16(at + 6)];
  if (first !== 4 || second !== 0) {
    throw new Error('this reader takes pairs that change the first advance only');
  }
  if (index < 0) {
    return undefined;
  }
  if (font.u16(at) === 1) {
    const set = at + font.u16(at + 10 + 2 * index);
    for (let i = 0; i < font.u16(set); i++) {
      if (font.u16(set + 2 + 4 * i) === right) {
        return font.data.getInt16(set + 4 + 4 * i);
      }
    }
    return undefined;
  }
  const row = glyphClass(font, at + font.u16(at + 8), left) * font.u16(at + 14);
  return font.data.getInt16(at + 16 + 2 * (row + glyphClass(font, at + font.u16(at + 10), right)));
}

/**
 * Kerning of two glyphs in font units by the font's GPOS pair tables (lookup type 2, also inside type 9), written from the standard's
 * text and used only to check what the shaping library does.
 *
 * @see OpenType 1.9.1, "GPOS — Glyph Positioning Table", lookup types 2 and 9
 */
export function gposKerning(font: FontReader, left: number, right: number): number {
  const gpos = font.table('GPOS');
  let sum = 0;
  for (const lookup of kernLookups(font, gpos)) {
    for (let i = 0; i < font.u16(lookup + 4); i++) {
      let at = lookup + font.u16(lookup + 6 + 2 * i);
      let type = font.u16(lookup);
      if (type === 9) {
        type = font.u16(at + 2);
        at += font.data.getUint32(at + 4);
      }
      if (type !== 2) {
        throw new Error(`this reader takes pair lookups, not type ${type}`);
      }
      const value = pairValue(font, at, left, right);
      if (value !== undefined) {
        sum += value;
        break;
      }
    }
  }
  return sum;
}

/** Kerning of two glyphs by a `kern` table with one horizontal pair subtable. */
export function kernTableKerning(font: FontReader, left: number, right: number): number {
  const at = font.table('kern') + 4;
  for (let i = 0; i < font.u16(at + 6); i++) {
    const row = at + 14 + 6 * i;
    if (font.u16(row) === left && font.u16(row + 2) === right) {
      return font.data.getInt16(row + 4);
    }
  }
  return 0;
}
