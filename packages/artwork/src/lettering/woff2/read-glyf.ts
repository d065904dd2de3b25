import { ByteReader } from './byte-reader.ts';
import { simpleGlyph } from './simple-glyph.ts';

/** Outlines as a font file has them. */
export interface GlyfTables {
  readonly glyf: Uint8Array;
  /** Offsets of four bytes each, whatever the font had. */
  readonly loca: Uint8Array;
  /** Least x of each glyph, which transformed metrics leave out. */
  readonly xMins: readonly number[];
}

/** The streams of a transformed glyf table, in their order in it. */
export interface GlyfStreams {
  readonly contours: ByteReader;
  readonly points: ByteReader;
  readonly flags: ByteReader;
  readonly glyphs: ByteReader;
  readonly composites: ByteReader;
  readonly boxes: ByteReader;
  readonly instructions: ByteReader;
}

/** Flags of a component of a composite glyph (OpenType, "glyf"). */
const WORDS = 0x0001;
const SCALE = 0x0008;
const MORE = 0x0020;
const TWO_SCALES = 0x0040;
const MATRIX = 0x0080;
const INSTRUCTIONS = 0x0100;

const HAS_OVERLAP_BITS = 0x0001;

/**
 * The tables `glyf` and `loca` of a transformed glyf table.
 *
 * @throws {RangeError} when its bytes end before they should
 * @see W3C WOFF File Format 2.0 (2022) §5.1
 */
export function readGlyf(table: Uint8Array): GlyfTables {
  const head = new ByteReader(table);
  head.u16();
  const options = head.u16();
  const count = head.u16();
  head.u16();
  const lengths = Array.from({ length: 7 }, () => head.u32());
  const [contours, points, flags, glyphs, composites, boxBytes, instructions] = lengths.map((length) =>
    head.bytes(length),
  ) as [Uint8Array, Uint8Array, Uint8Array, Uint8Array, Uint8Array, Uint8Array, Uint8Array];
  const boxBits = 4 * ((count + 31) >> 5);
  const overlaps = (options & HAS_OVERLAP_BITS) === 0 ? null : head.bytes((count + 7) >> 3);
  const streams: GlyfStreams = {
    contours: new ByteReader(contours),
    points: new ByteReader(points),
    flags: new ByteReader(flags),
    glyphs: new ByteReader(glyphs),
    composites: new ByteReader(composites),
    boxes: new ByteReader(boxBytes, boxBits),
    instructions: new ByteReader(instructions),
  };
  const parts: Uint8Array[] = [];
  const xMins: number[] = [];
  for (let k = 0; k < count; k++) {
    const glyph = readGlyph(streams, hasBit(boxBytes, k), overlaps !== null && hasBit(overlaps, k));
    parts.push(glyph);
    xMins.push(glyph.length === 0 ? 0 : new DataView(glyph.buffer, glyph.byteOffset).getInt16(2));
  }
  return { ...joined(parts), xMins };
}

function hasBit(bits: Uint8Array, k: number): boolean {
  return ((bits[k >> 3] as number) & (0x80 >> (k & 7))) !== 0;
}

function readGlyph(streams: GlyfStreams, hasBox: boolean, overlaps: boolean): Uint8Array {
  const contours = streams.contours.i16();
  if (contours === 0) {
    return new Uint8Array();
  }
  const box = hasBox ? streams.boxes.bytes(8) : null;
  if (contours > 0) {
    return simpleGlyph(streams, contours, box, overlaps);
  }
  if (box === null) {
    throw new RangeError('a composite glyph has no box');
  }
  return compositeGlyph(streams, box);
}

function compositeGlyph({ composites, glyphs, instructions }: GlyfStreams, box: Uint8Array): Uint8Array {
  const parts: number[] = [0xff, 0xff, ...box];
  let flags = MORE;
  let hasInstructions = false;
  while ((flags & MORE) !== 0) {
    flags = composites.u16();
    hasInstructions ||= (flags & INSTRUCTIONS) !== 0;
    const scales =
      (flags & SCALE) !== 0 ? 2 : (flags & TWO_SCALES) !== 0 ? 4 : (flags & MATRIX) !== 0 ? 8 : 0;
    const rest = composites.bytes(2 + ((flags & WORDS) !== 0 ? 4 : 2) + scales);
    parts.push(flags >> 8, flags & 0xff, ...rest);
  }
  if (hasInstructions) {
    const length = glyphs.short();
    parts.push(length >> 8, length & 0xff, ...instructions.bytes(length));
  }
  return Uint8Array.from(parts);
}

function joined(parts: readonly Uint8Array[]): { readonly glyf: Uint8Array; readonly loca: Uint8Array } {
  const padded = (length: number): number => (length + 3) & ~3;
  const glyf = new Uint8Array(parts.reduce((sum, part) => sum + padded(part.length), 0));
  const loca = new Uint8Array(4 * (parts.length + 1));
  const offsets = new DataView(loca.buffer);
  let at = 0;
  parts.forEach((part, k) => {
    offsets.setUint32(4 * k, at);
    glyf.set(part, at);
    at += padded(part.length);
  });
  offsets.setUint32(4 * parts.length, at);
  return { glyf, loca };
}
