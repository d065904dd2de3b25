import { isBinaryDxf } from './dxf/binary-groups.ts';
import { fileRefusal, type OtherFormat } from './file-refusals.ts';

/**
 * The format of a file, told by its content first and its name second, without reading it.
 *
 * @throws {ArtworkError} `artwork-empty`, or `artwork-unknown` for what is neither SVG nor DXF
 */
export function artworkFormat(bytes: Uint8Array, name: string): 'svg' | 'dxf' {
  if (bytes.length === 0) {
    throw fileRefusal('artwork-empty', { name });
  }
  const other = OTHERS.find(([start]) => start.every((byte, i) => bytes[i] === byte));
  const format = other === undefined ? formatOf(bytes, name) : undefined;
  if (format === undefined) {
    throw fileRefusal('artwork-unknown', { name, format: other?.[1] ?? 'unknown' });
  }
  return format;
}

/** First bytes of formats that people send by mistake. */
const OTHERS: readonly (readonly [number[], OtherFormat])[] = [
  [[0x89, 0x50, 0x4e, 0x47], 'png'],
  [[0xff, 0xd8, 0xff], 'jpeg'],
  [[0x47, 0x49, 0x46, 0x38], 'gif'],
  [[0x25, 0x50, 0x44, 0x46], 'pdf'],
  [[0x50, 0x4b, 0x03, 0x04], 'zip'],
  [[0x25, 0x21, 0x50, 0x53], 'postscript'],
];

function formatOf(bytes: Uint8Array, name: string): 'svg' | 'dxf' | undefined {
  if (isBinaryDxf(bytes)) {
    return 'dxf';
  }
  const isGzip = bytes[0] === 0x1f && bytes[1] === 0x8b;
  // without the zero bytes of UTF-16 and a byte order mark, formats look alike in every encoding
  const head = String.fromCharCode(...bytes.subarray(0, 2000).filter((b) => b !== 0 && b < 0x80));
  if (isGzip || /^\s*</.test(head)) {
    return 'svg';
  }
  if (/^\s*\d{1,4}[ \t]*\r?[\n\r]/.test(head)) {
    return 'dxf';
  }
  const extension = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase();
  if (extension === 'svg' || extension === 'svgz') {
    return 'svg';
  }
  return extension === 'dxf' ? 'dxf' : undefined;
}
