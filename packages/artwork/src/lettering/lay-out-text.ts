import { glyphInk } from './glyph-outline.ts';
import type { LayoutOptions } from './layout-options.ts';
import type { OpenedFont } from './opened-font.ts';
import { type Ink, type InkedLine, type Layout, placeLines } from './place-lines.ts';
import { shapeLine } from './shape-line.ts';
import type { ShapeOptions } from './shape-options.ts';

/**
 * Sets `text` (several lines by any line break) in mm, each line shaped by the font's own tables; see
 * {@link placeLines} for the place and the errors.
 */
export function layOutText(font: OpenedFont, text: string, options: LayoutOptions): Layout {
  const spaced = (options.trackingMm ?? 0) !== 0;
  const shape: ShapeOptions = spaced
    ? { ...options, features: ['-liga', '-clig', ...(options.features ?? [])] }
    : options;
  return placeLines(
    splitLines(text).map((line) => measureLine(font, line, shape)),
    font,
    options,
  );
}

/** Lines of a text; empty lines at its end do not count, and a tab is four spaces. */
export function splitLines(text: string): string[] {
  const lines = text.replaceAll('\t', '    ').split(/\r\n|[\n\r\u2028\u2029]/u);
  while (lines.length > 1 && lines.at(-1)?.trim() === '') {
    lines.pop();
  }
  return lines;
}

function measureLine(font: OpenedFont, text: string, options: ShapeOptions): InkedLine {
  let x = 0;
  const inks: Ink[] = [];
  const clusters = shapeLine(font, text, options).map((cluster, steps) => {
    const at = x;
    x += cluster.advance;
    for (const g of cluster.glyphs) {
      const box = glyphInk(font, g.glyph);
      if (box) {
        const dx = at + g.x;
        inks.push({
          steps,
          minX: box.minX + dx,
          maxX: box.maxX + dx,
          minY: box.minY + g.y,
          maxY: box.maxY + g.y,
        });
      }
    }
    return { cluster, x: at, steps };
  });
  return { text, clusters, inks };
}
