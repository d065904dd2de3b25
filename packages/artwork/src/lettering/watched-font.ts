import type { LetteringFont } from './lettering-font.ts';
import { type OpenedFont, openedFont } from './opened-font.ts';
import { outlineText } from './outline-text.ts';

/** A font that knows whether a letter has been drawn from it. */
export interface WatchedFont {
  readonly font: LetteringFont;
  /** Whether a reader that was given {@link font} has drawn a letter of it. */
  readonly isUsed: () => boolean;
}

/** The same font, watched: whoever draws a letter has to read its units, and that is what is seen. */
export function watchedFont(font: LetteringFont): WatchedFont {
  const opened = openedFont(font);
  let isUsed = false;
  const watched: OpenedFont = {
    ...opened,
    get unitsPerEm() {
      isUsed = true;
      return opened.unitsPerEm;
    },
    outlineText: (text, options) => outlineText(watched, text, options),
  };
  return { font: watched, isUsed: () => isUsed };
}
