export { ArtworkError, type ErrorPlace } from './artwork-error.ts';
export type { DxfUnit } from './dxf/dxf-unit.ts';
export { type ReadDxfOptions, readDxf } from './dxf/read-dxf.ts';
export type { LayoutOptions } from './lettering/layout-options.ts';
export type { FontAxis, LetteringFont } from './lettering/lettering-font.ts';
export { type OpenFontOptions, openFont } from './lettering/open-font.ts';
export type {
  OutlinedGlyph,
  OutlinedText,
  OutlineTextOptions,
  RunLetter,
} from './lettering/outlined-text.ts';
export type { LetteringArc, PlacingOptions } from './lettering/place-lines.ts';
export { type LetteringOptions, readLettering } from './lettering/read-lettering.ts';
export { readStickLettering, type StickLetteringOptions } from './lettering/read-stick-lettering.ts';
export { visibleLines } from './lettering/visible-lines.ts';
export { type WatchedFont, watchedFont } from './lettering/watched-font.ts';
export { type ReadOptions, readArtwork } from './read.ts';
export { refuseEmpty } from './refuse-empty.ts';
export { refuseSize } from './refuse-size.ts';
export { readSvg } from './svg/read-svg.ts';
export type { SvgOptions } from './svg/svg-options.ts';
