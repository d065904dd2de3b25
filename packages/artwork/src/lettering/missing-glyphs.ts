import type { Cluster } from './cluster.ts';
import { letteringRefusal } from './lettering-refusals.ts';
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
  const lines = new Map<string, number>();
  for (const { cluster, lineText, line } of clusters) {
    if (cluster.glyphs.some((g) => g.glyph === 0)) {
      const chars = [...lineText.slice(cluster.start, cluster.end)];
      const lacking = chars.filter((c) => !hasGlyph(font, c));
      for (const char of lacking.length > 0 ? lacking : chars) {
        if (!lines.has(char)) {
          lines.set(char, line);
        }
      }
    }
  }
  if (lines.size > 0) {
    throw letteringRefusal('missing-glyph', {
      font: font.name,
      characters: [...lines].map(([text, line]) => ({ text, line })),
    });
  }
}

function hasGlyph(font: OpenedFont, char: string): boolean {
  return font.shaped.nominalGlyph(char.codePointAt(0) ?? 0) !== undefined;
}
