import { ArtworkError } from './artwork-error.ts';
import { isBinaryDxf } from './dxf/binary-groups.ts';

/**
 * The format of a file, told by its content first and its name second, without reading it.
 *
 * @throws {ArtworkError} `artwork-empty`, or `artwork-unknown` for what is neither SVG nor DXF
 */
export function artworkFormat(bytes: Uint8Array, name: string): 'svg' | 'dxf' {
  if (bytes.length === 0) {
    throw new ArtworkError(
      'artwork-empty',
      `${name} is empty.`,
      'Export the drawing again and check the size of the file.',
    );
  }
  const other = OTHERS.find(([start]) => start.every((byte, i) => bytes[i] === byte));
  const format = other === undefined ? formatOf(bytes, name) : undefined;
  if (format === undefined) {
    throw new ArtworkError(
      'artwork-unknown',
      `${name} is ${other?.[1] ?? 'neither an SVG nor a DXF file'}.`,
      'Save the drawing as SVG or DXF and try again.',
    );
  }
  return format;
}

/** First bytes of formats that people send by mistake, in words. */
const OTHERS: readonly (readonly [number[], string])[] = [
  [[0x89, 0x50, 0x4e, 0x47], 'a PNG picture; only drawn shapes can be carved'],
  [[0xff, 0xd8, 0xff], 'a JPEG picture; only drawn shapes can be carved'],
  [[0x47, 0x49, 0x46, 0x38], 'a GIF picture; only drawn shapes can be carved'],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF file'],
  [[0x50, 0x4b, 0x03, 0x04], 'a ZIP archive; unpack it first'],
  [[0x25, 0x21, 0x50, 0x53], 'a PostScript file'],
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
