import { unzlibSync } from 'fflate';
import { ArtworkError } from '../artwork-error.ts';
import { letteringRefusal } from './lettering-refusals.ts';

const TRUETYPE = 0x00010000;
const OTTO = 0x4f54544f;
const TRUE = 0x74727565;
const TTCF = 0x74746366;
const WOFF = 0x774f4646;
const WOFF2 = 0x774f4632;

/**
 * Fonts of all of Chinese, Japanese and Korean take up to about 30 MB (from memory); anything that claims
 * more than this is refused.
 */
const MAX_FONT_BYTES = 256 * 2 ** 20;

/**
 * The plain OpenType or TrueType file, or collection, inside `bytes`: WOFF and WOFF2 are unpacked, others are
 * checked to be whole and returned as they are.
 *
 * @throws {ArtworkError} `font-unreadable` when it is no font or is damaged, `font-truncated` when the end of
 *   the file is missing
 * @see OpenType 1.9.1, "Table directory"; W3C WOFF 1.0 (2012) §4–5; W3C WOFF 2.0 (2022)
 */
export async function unpackFont(bytes: Uint8Array): Promise<Uint8Array> {
  const kind = bytes.length < 12 ? 0 : view(bytes).getUint32(0);
  let plain = bytes;
  if (kind === WOFF) {
    plain = unpackWoff(bytes);
  } else if (kind === WOFF2) {
    plain = await unpackWoff2(bytes);
  } else if (kind !== TRUETYPE && kind !== OTTO && kind !== TRUE && kind !== TTCF) {
    throw letteringRefusal('font-unreadable', { cause: 'no-font' });
  }
  checkWhole(plain);
  return plain;
}

/** How many faces the file holds: 1, unless it is a collection. */
export function faceCount(bytes: Uint8Array): number {
  const data = view(bytes);
  return data.getUint32(0) === TTCF ? data.getUint32(8) : 1;
}

/** A view for big-endian reading of all of `bytes`. */
export function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

// every table of every face must lie inside the file
function checkWhole(bytes: Uint8Array): void {
  try {
    const data = view(bytes);
    const faces = faceCount(bytes);
    for (let face = 0; face < faces; face++) {
      const start = data.getUint32(0) === TTCF ? data.getUint32(12 + 4 * face) : 0;
      const count = data.getUint16(start + 4);
      for (let i = 0; i < count; i++) {
        const row = start + 12 + 16 * i;
        if (data.getUint32(row + 8) + data.getUint32(row + 12) > bytes.length) {
          throw letteringRefusal('font-truncated', { part: tag(data, row).trim() });
        }
      }
    }
  } catch (error) {
    throw error instanceof RangeError ? letteringRefusal('font-truncated', { part: 'directory' }) : error;
  }
}

function unpackWoff(bytes: Uint8Array): Uint8Array {
  const data = view(bytes);
  try {
    const count = data.getUint16(12);
    const total = data.getUint32(16);
    if (total > MAX_FONT_BYTES) {
      throw letteringRefusal('font-unreadable', { cause: 'too-large', bytes: total });
    }
    const out = new Uint8Array(total);
    const head = view(out);
    head.setUint32(0, data.getUint32(4));
    head.setUint16(4, count);
    let at = 12 + 16 * count;
    for (let i = 0; i < count; i++) {
      const row = 44 + 20 * i;
      const table = woffTable(bytes, data, row);
      const to = 12 + 16 * i;
      head.setUint32(to, data.getUint32(row));
      head.setUint32(to + 4, data.getUint32(row + 16));
      head.setUint32(to + 8, at);
      head.setUint32(to + 12, table.length);
      out.set(table, at);
      at += (table.length + 3) & ~3;
    }
    return out;
  } catch (error) {
    throw error instanceof ArtworkError
      ? error
      : letteringRefusal('font-unreadable', { cause: 'damaged', packing: 'WOFF' });
  }
}

function woffTable(bytes: Uint8Array, data: DataView, row: number): Uint8Array {
  const from = data.getUint32(row + 4);
  const packed = data.getUint32(row + 8);
  const length = data.getUint32(row + 12);
  const part = bytes.subarray(from, from + packed);
  if (part.length < packed) {
    throw letteringRefusal('font-truncated', { part: tag(data, row).trim() });
  }
  return packed < length ? unzlibSync(part, { out: new Uint8Array(length) }) : part;
}

async function unpackWoff2(bytes: Uint8Array): Promise<Uint8Array> {
  const data = view(bytes);
  if (bytes.length < 48 || data.getUint32(8) > bytes.length) {
    throw letteringRefusal('font-truncated', { part: 'WOFF2 data' });
  }
  if (data.getUint32(16) > MAX_FONT_BYTES) {
    throw letteringRefusal('font-unreadable', { cause: 'too-large', bytes: data.getUint32(16) });
  }
  // loaded on demand: most fonts that people have are not WOFF2, and the words that Brotli knows are many
  const { readWoff2 } = await import('./woff2/read-woff2.ts');
  try {
    return readWoff2(bytes, MAX_FONT_BYTES);
  } catch {
    throw letteringRefusal('font-unreadable', { cause: 'damaged', packing: 'WOFF2' });
  }
}

function tag(data: DataView, at: number): string {
  return String.fromCharCode(
    data.getUint8(at),
    data.getUint8(at + 1),
    data.getUint8(at + 2),
    data.getUint8(at + 3),
  );
}
