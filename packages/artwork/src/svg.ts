// what `@pourproof/artwork/svg` offers: SVG alone
export { ArtworkError, type ErrorPlace } from './artwork-error.ts';
export { readSvg } from './svg/read-svg.ts';
export type { SvgOptions } from './svg/svg-options.ts';
