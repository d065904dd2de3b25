import type { ArtworkSource, NamedBytes } from './artwork-source.ts';
import { demoOrderArtwork } from './demo-order.ts';
import { type ChosenFile, type OpenedFiles, openedFiles } from './opened-files.ts';
import { type ShippedFont, shippedFontFile } from './shipped-fonts.ts';

/** The font of lettering: one of the page's, a file of the maker's own, one that is at hand, or `null` for single strokes. */
export type ChosenFont =
  | { readonly kind: 'shipped'; readonly font: ShippedFont }
  | { readonly kind: 'file'; readonly file: ChosenFile }
  | { readonly kind: 'at-hand'; readonly font: NamedBytes }
  | null;

/** What the page has to wait for. */
export interface Loads {
  readonly files: (files: readonly ChosenFile[]) => Promise<OpenedFiles>;
  readonly demo: () => Promise<ArtworkSource>;
  readonly font: (font: ChosenFont) => Promise<NamedBytes | null>;
}

/** Loads from the maker's computer and from where the page comes from. */
export const browserLoads: Loads = { files: openedFiles, demo: demoOrderArtwork, font: loadedFont };

async function loadedFont(chosen: ChosenFont): Promise<NamedBytes | null> {
  switch (chosen?.kind) {
    case 'shipped':
      return shippedFontFile(chosen.font);
    case 'file':
      return { name: chosen.file.name, bytes: new Uint8Array(await chosen.file.arrayBuffer()) };
    case 'at-hand':
      return chosen.font;
    default:
      return null;
  }
}
