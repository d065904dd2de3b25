// what `@pourproof/artwork/lettering` offers: lettering alone, and fonts for the texts of SVG and DXF files
export { ArtworkError, type ErrorPlace } from './artwork-error.ts';
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
