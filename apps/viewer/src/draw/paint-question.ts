import type { Frame, InkColours } from './art-painter.ts';
import type { Art } from './art-shapes.ts';

/** What the sheet asks of the worker that paints. */
export type PaintQuestion =
  /** Other lines to paint from now on. */
  | { readonly kind: 'art'; readonly art: Art; readonly inks: InkColours }
  /** One frame of them. */
  | { readonly kind: 'frame'; readonly artId: number; readonly frame: Frame };

/** A painted frame. */
export interface PaintAnswer {
  readonly artId: number;
  readonly frame: Frame;
  readonly bitmap: ImageBitmap;
}
