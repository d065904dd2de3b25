import { Gunzip } from 'fflate';
import { ArtworkError } from '../artwork-error.ts';
import { decodeBytes } from '../decode-bytes.ts';
import { svgRefusal } from './svg-refusals.ts';

/** Largest size of an unpacked file, in bytes: far above any drawing, far below what exhausts memory. */
const MAX_UNPACKED_BYTES = 256 * 1024 * 1024;

/** Text of an SVG file and how it was found to be encoded. */
export interface DecodedSvg {
  readonly text: string;
  readonly encoding: string;
  /** The encoding that the file declares, where it is not the one that it has. */
  readonly wronglyDeclared?: string;
  /** Set where the file was packed and is not what its checksum says. */
  readonly isDamaged?: true;
}

/**
 * The text of an SVG file: unpacked if it is gzip-compressed, in UTF-8, UTF-16 with or without a mark, or the
 * encoding that its XML declaration names. A byte order mark or the pattern of zero bytes wins over the
 * declaration, as XML 1.0 appendix F has it.
 *
 * @throws {ArtworkError} `svg-packed-broken`, `svg-packed-too-large`, `svg-encoding-unknown`,
 *   `svg-encoding-broken`
 */
export function decodeSvg(bytes: Uint8Array): DecodedSvg {
  const packed = bytes[0] === 0x1f && bytes[1] === 0x8b ? unpack(bytes) : null;
  const plain = packed?.plain ?? bytes;
  const marked = markedEncoding(plain);
  const declared = declaredEncoding(plain, marked ?? 'utf-8');
  const encoding = marked ?? declared ?? 'utf-8';
  const text = decodeWith(plain, encoding);
  const sameFamily = declared === undefined || encoding.startsWith(declared) || declared.startsWith(encoding);
  const decoded = { text, encoding, ...(packed?.isDamaged === true ? { isDamaged: true as const } : {}) };
  return sameFamily ? decoded : { ...decoded, wronglyDeclared: declared };
}

function unpack(bytes: Uint8Array): { readonly plain: Uint8Array; readonly isDamaged: boolean } {
  const chunks: Uint8Array[] = [];
  let size = 0;
  let members = 0;
  try {
    const gunzip = new Gunzip((chunk) => {
      size += chunk.length;
      if (size > MAX_UNPACKED_BYTES) {
        throw svgRefusal('svg-packed-too-large', { mostBytes: MAX_UNPACKED_BYTES });
      }
      chunks.push(chunk);
    });
    gunzip.onmember = () => {
      members++;
    };
    // small bites, so that a bomb is stopped before it is unpacked
    for (let at = 0; at < bytes.length; at += 65_536) {
      gunzip.push(bytes.subarray(at, at + 65_536), at + 65_536 >= bytes.length);
    }
  } catch (error) {
    if (error instanceof ArtworkError) {
      throw error;
    }
    throw svgRefusal('svg-packed-broken', {});
  }
  const out = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    out.set(chunk, at);
    at += chunk.length;
  }
  // of several files packed one after the other each has a trailer of its own, of which only the last is in reach
  return { plain: out, isDamaged: members <= 1 && !matchesTrailer(bytes, out) };
}

/** Whether what was unpacked has the checksum and the length that the last eight bytes say (RFC 1952 §2.3.1). */
function matchesTrailer(bytes: Uint8Array, plain: Uint8Array): boolean {
  if (bytes.length < 8) {
    return false;
  }
  const trailer = new DataView(bytes.buffer, bytes.byteOffset + bytes.length - 8, 8);
  return trailer.getUint32(4, true) === plain.length && trailer.getUint32(0, true) === crc32(plain);
}

/** CRC-32 with the reversed polynomial of RFC 1952 §8. */
function crc32(bytes: Uint8Array): number {
  const table = Uint32Array.from({ length: 256 }, (_, byte) => {
    let value = byte;
    for (let bit = 0; bit < 8; bit++) {
      value = (value & 1) === 0 ? value >>> 1 : (value >>> 1) ^ 0xedb88320;
    }
    return value;
  });
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc = (crc >>> 8) ^ (table[(crc ^ byte) & 0xff] as number);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

/** The encoding that the first bytes prove. */
function markedEncoding(b: Uint8Array): string | undefined {
  if (b[0] === 0xef && b[1] === 0xbb && b[2] === 0xbf) {
    return 'utf-8';
  }
  if ((b[0] === 0xff && b[1] === 0xfe) || (b[0] === 0x3c && b[1] === 0)) {
    return 'utf-16le';
  }
  if ((b[0] === 0xfe && b[1] === 0xff) || (b[0] === 0 && b[1] === 0x3c)) {
    return 'utf-16be';
  }
  return undefined;
}

/** The encoding named in the XML declaration, in lower case. */
function declaredEncoding(bytes: Uint8Array, readAs: string): string | undefined {
  const start = decodeBytes(bytes.subarray(0, 400), readAs);
  return /^\s*<\?xml[^>]*?\bencoding\s*=\s*["']([A-Za-z][\w.-]*)["']/.exec(start)?.[1]?.toLowerCase();
}

function decodeWith(bytes: Uint8Array, encoding: string): string {
  try {
    return decodeBytes(bytes, encoding, true);
  } catch (error) {
    if (error instanceof RangeError) {
      throw svgRefusal('svg-encoding-unknown', { encoding });
    }
    throw svgRefusal('svg-encoding-broken', { encoding });
  }
}
