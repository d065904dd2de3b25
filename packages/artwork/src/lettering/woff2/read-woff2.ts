import { decompress } from 'brotli/decompress';
import { ByteReader } from './byte-reader.ts';
import { type FontFace, fontFile, type Table } from './font-file.ts';
import { readGlyf } from './read-glyf.ts';
import { readHmtx } from './read-hmtx.ts';

const TTCF = 0x74746366;
const HEADER_BYTES = 48;

/** Tags of the table directory by their numbers (§4.1), each of four characters and a space between; 63 stands for one that is spelt out. */
const TAGS =
  'cmap head hhea hmtx maxp name OS/2 post cvt  fpgm glyf loca prep CFF  VORG EBDT EBLC gasp hdmx kern LTSH PCLT VDMX vhea vmtx BASE ' +
  'GDEF GPOS GSUB EBSC JSTF MATH CBDT CBLC COLR CPAL SVG  sbix acnt avar bdat bloc bsln cvar fdsc feat fmtx fvar gvar hsty just lcar ' +
  'mort morx opbd prop trak Zapf Silf Glat Gloc Feat Sill';
const SPELT_OUT = 63;

interface Entry {
  readonly tag: string;
  readonly isTransformed: boolean;
  readonly length: number;
}

/**
 * The plain font file, or collection, in a WOFF2 file. Checksums are left 0: nothing here reads them.
 *
 * @throws {RangeError | Error} when the bytes are not what they should be
 * @see W3C WOFF File Format 2.0 (2022)
 */
export function readWoff2(bytes: Uint8Array, maxBytes: number): Uint8Array {
  const from = new ByteReader(bytes, 4);
  const flavour = from.u32();
  from.u32();
  const count = from.u16();
  from.u16();
  from.u32();
  const packedLength = from.u32();
  const directory = new ByteReader(bytes, HEADER_BYTES);
  const entries = Array.from({ length: count }, () => readEntry(directory));
  const faces =
    flavour === TTCF
      ? readFaces(directory)
      : [{ flavour, tables: Array.from({ length: count }, (_, k) => k) }];
  const size = entries.reduce((sum, { length }) => sum + length, 0);
  if (size > maxBytes) {
    throw new RangeError('the tables are larger than any font');
  }
  const unpacked = new ByteReader(decompress(directory.bytes(packedLength), size));
  const tables = entries.map(({ tag, length }): Table => ({ tag, bytes: unpacked.bytes(length) }));
  restore(entries, tables, faces);
  return fontFile(tables, faces);
}

function readEntry(from: ByteReader): Entry {
  const flags = from.u8();
  const known = flags & SPELT_OUT;
  const tag =
    known === SPELT_OUT ? String.fromCharCode(...from.bytes(4)) : TAGS.slice(5 * known, 5 * known + 4);
  const version = flags >> 6;
  // outlines are transformed unless their version says not, other tables the other way round
  const isTransformed = tag === 'glyf' || tag === 'loca' ? version !== 3 : version !== 0;
  const original = from.base128();
  return { tag, isTransformed, length: isTransformed ? from.base128() : original };
}

function readFaces(from: ByteReader): FontFace[] {
  from.u32();
  return Array.from({ length: from.short() }, () => {
    const count = from.short();
    const flavour = from.u32();
    return { flavour, tables: Array.from({ length: count }, () => from.short()) };
  });
}

/** Puts plain tables in the place of transformed ones; faces may share them. */
function restore(entries: readonly Entry[], tables: Table[], faces: readonly FontFace[]): void {
  const done = new Set<number>();
  for (const face of faces) {
    const indexOf = (tag: string): number => face.tables.find((k) => tables[k]?.tag === tag) ?? -1;
    const [glyf, loca, head, hmtx] = ['glyf', 'loca', 'head', 'hmtx'].map(indexOf) as [
      number,
      number,
      number,
      number,
    ];
    if (entries[glyf]?.isTransformed !== true || done.has(glyf)) {
      continue;
    }
    done.add(glyf);
    const outlines = readGlyf((tables[glyf] as Table).bytes);
    tables[glyf] = { tag: 'glyf', bytes: outlines.glyf };
    tables[loca] = { tag: 'loca', bytes: outlines.loca };
    // long offsets
    new DataView((tables[head] as Table).bytes.buffer, (tables[head] as Table).bytes.byteOffset).setInt16(
      50,
      1,
    );
    if (entries[hmtx]?.isTransformed === true && !done.has(hmtx)) {
      done.add(hmtx);
      const metrics = new ByteReader((tables[indexOf('hhea')] as Table).bytes, 34).u16();
      tables[hmtx] = { tag: 'hmtx', bytes: readHmtx((tables[hmtx] as Table).bytes, metrics, outlines.xMins) };
    }
  }
}
