import type { LetteringFont } from './open-font.ts';

/** A font that knows whether letters were taken from it. */
export interface WatchedFont {
  readonly font: LetteringFont;
  /** Whether a reader that was given {@link font} has drawn a letter of it. */
  readonly isUsed: () => boolean;
}

/** The same font, watched: whoever draws a letter has to read its units, and that is what is seen. */
export function watchedFont(font: LetteringFont): WatchedFont {
  let isUsed = false;
  const watched = Object.defineProperty({ ...font }, 'unitsPerEm', {
    get: () => {
      isUsed = true;
      return font.unitsPerEm;
    },
  });
  return { font: watched, isUsed: () => isUsed };
}
