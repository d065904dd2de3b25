import type { PlacingOptions } from './place-lines.ts';
import type { ShapeOptions } from './shape-options.ts';

/** How text is set in a font; give `capHeightMm` or `widthMm`, not both. */
export interface LayoutOptions extends ShapeOptions, PlacingOptions {}
