export { ArtworkError, type ErrorPlace } from './artwork-error.ts';
export type { DxfUnit } from './dxf/dxf-unit.ts';
export { type ReadDxfOptions, readDxf } from './dxf/read-dxf.ts';
export { findFont, type WantedFont } from './lettering/find-font.ts';
export type { LayoutOptions } from './lettering/lay-out-text.ts';
export { type FontAxis, type LetteringFont, type OpenFontOptions, openFont } from './lettering/open-font.ts';
export {
  type OutlinedGlyph,
  type OutlinedText,
  type OutlineTextOptions,
  outlineText,
  type RunLetter,
} from './lettering/outline-text.ts';
export type { LetteringArc, PlacingOptions } from './lettering/place-lines.ts';
export { type LetteringOptions, readLettering } from './lettering/read-lettering.ts';
export { readStickLettering, type StickLetteringOptions } from './lettering/read-stick-lettering.ts';
export { visibleLines } from './lettering/visible-lines.ts';
export { type WatchedFont, watchedFont } from './lettering/watched-font.ts';
export { type ReadOptions, readArtwork } from './read.ts';
export { refuseEmpty } from './refuse-empty.ts';
export { readSvg } from './svg/read-svg.ts';
export type { SvgOptions } from './svg/svg-options.ts';
