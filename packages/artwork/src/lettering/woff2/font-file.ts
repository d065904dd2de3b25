/** A table of a font file. */
export interface Table {
  readonly tag: string;
  readonly bytes: Uint8Array;
}

/** A face of a font file: its kind, and which of the tables it has. */
export interface FontFace {
  readonly flavour: number;
  readonly tables: readonly number[];
}

const TTCF = 0x74746366;
const ROW = 16;

/**
 * A plain font file of one face, or a collection of several that share tables.
 *
 * @see OpenType 1.9.1, "Organization of an OpenType font"
 */
export function fontFile(tables: readonly Table[], faces: readonly FontFace[]): Uint8Array {
  const lead = faces.length === 1 ? 0 : 12 + 4 * faces.length;
  const starts: number[] = [];
  let at = lead;
  for (const face of faces) {
    starts.push(at);
    at += 12 + ROW * face.tables.length;
  }
  const offsets = tables.map(({ bytes }) => {
    const offset = at;
    at += (bytes.length + 3) & ~3;
    return offset;
  });
  const out = new Uint8Array(at);
  const to = new DataView(out.buffer);
  if (lead > 0) {
    to.setUint32(0, TTCF);
    to.setUint32(4, 0x00010000);
    to.setUint32(8, faces.length);
    starts.forEach((start, k) => {
      to.setUint32(12 + 4 * k, start);
    });
  }
  faces.forEach((face, k) => {
    writeDirectory(to, starts[k] as number, face, tables, offsets);
  });
  tables.forEach(({ bytes }, k) => {
    out.set(bytes, offsets[k] as number);
  });
  return out;
}

function writeDirectory(
  to: DataView,
  start: number,
  face: FontFace,
  tables: readonly Table[],
  offsets: readonly number[],
): void {
  to.setUint32(start, face.flavour);
  to.setUint16(start + 4, face.tables.length);
  const rows = face.tables.map((index) => ({ index, tag: (tables[index] as Table).tag }));
  rows.sort((a, b) => (a.tag < b.tag ? -1 : 1));
  rows.forEach(({ index, tag }, k) => {
    const row = start + 12 + ROW * k;
    for (let i = 0; i < 4; i++) {
      to.setUint8(row + i, tag.charCodeAt(i));
    }
    to.setUint32(row + 8, offsets[index] as number);
    to.setUint32(row + 12, (tables[index] as Table).bytes.length);
  });
}
