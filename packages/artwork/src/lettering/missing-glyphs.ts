import { ArtworkError } from '../artwork-error.ts';
import type { Cluster } from './cluster.ts';
import type { OpenedFont } from './opened-font.ts';

/** A cluster, the line that it stands in (text and number from 1). */
export interface ClusterInLine {
  readonly cluster: Cluster;
  readonly lineText: string;
  readonly line: number;
}

/**
 * Refuses text for which the font has no letter, naming every such character once with its first place.
 *
 * @throws {ArtworkError} `missing-glyph`
 */
export function refuseMissingGlyphs(font: OpenedFont, clusters: readonly ClusterInLine[]): void {
  const named = new Map<string, string>();
  for (const { cluster, lineText, line } of clusters) {
    if (cluster.glyphs.some((g) => g.glyph === 0)) {
      const chars = [...lineText.slice(cluster.start, cluster.end)];
      const lacking = chars.filter((c) => !hasGlyph(font, c));
      for (const char of lacking.length > 0 ? lacking : chars) {
        if (!named.has(char)) {
          named.set(char, `${characterName(char)} in line ${line}`);
        }
      }
    }
  }
  if (named.size > 0) {
    throw new ArtworkError(
      'missing-glyph',
      `The font ${font.name} has no letter for ${[...named.values()].join(', ')}.`,
      'Choose a font that has it, or change the text.',
    );
  }
}

function hasGlyph(font: OpenedFont, char: string): boolean {
  return font.shaped.nominalGlyph(char.codePointAt(0) ?? 0) !== undefined;
}

/** How a message names a character: `"é" (U+00E9)`. */
export function characterName(char: string): string {
  const code = (char.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  // a mark is shown on a dotted circle, a control character not at all
  const shown = /\p{M}/u.test(char) ? `"\u25cc${char}" ` : /\p{C}|\p{Z}/u.test(char) ? '' : `"${char}" `;
  return `${shown}(U+${code})`;
}
