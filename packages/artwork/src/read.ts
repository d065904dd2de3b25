import type { Drawing } from '@pourproof/plane';
import { artworkFormat } from './artwork-format.ts';
import { type ReadDxfOptions, readDxf } from './dxf/read-dxf.ts';
import { readSvg } from './svg/read-svg.ts';
import type { SvgOptions } from './svg/svg-options.ts';

/** How an artwork file of any format is read; what a format has no use for is ignored. */
export interface ReadOptions extends SvgOptions, ReadDxfOptions {}

/**
 * The drawing in a file, whose format is told by its content first and its name second.
 *
 * @throws {ArtworkError} `artwork-empty`, `artwork-unknown`, or what the format's reader finds wrong
 * @throws {RangeError} for an option out of its range
 * @public
 *
 * @example
 * ```ts
 * const drawing = readArtwork(bytes, 'sign.svg', { widthMm: 300 });
 * refuseEmpty(drawing, 'sign.svg');
 * ```
 */
export function readArtwork(bytes: Uint8Array, name: string, options: ReadOptions = {}): Drawing {
  return artworkFormat(bytes, name) === 'svg' ? readSvg(bytes, options) : readDxf(bytes, options);
}
