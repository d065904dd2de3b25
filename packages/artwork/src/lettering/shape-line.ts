import bidiFactory from 'bidi-js';
import type { GlyphInfo, GlyphPosition } from 'harfbuzzjs';
import type { Cluster, PlacedGlyph } from './cluster.ts';
import type { OpenedFont } from './opened-font.ts';
import { scriptRuns } from './script-runs.ts';
import type { ShapeOptions } from './shape-options.ts';

// the package's types describe its module build, while Node loads its CommonJS build, whose only export is
// the function itself
const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();

interface Run {
  readonly start: number;
  readonly end: number;
  readonly level: number;
  readonly script: string;
}

/**
 * Clusters of one line from left to right as seen, shaped and kerned by the font's own tables.
 *
 * Directions follow the Unicode bidirectional algorithm (UAX 9); each run of one direction and one script is
 * shaped by itself with the whole line as context, so that joined scripts join across runs.
 */
export function shapeLine(font: OpenedFont, line: string, options: ShapeOptions = {}): readonly Cluster[] {
  return visualRuns(line, options.direction ?? 'auto').flatMap((run) => shapeRun(font, line, run, options));
}

function visualRuns(line: string, direction: 'auto' | 'ltr' | 'rtl'): readonly Run[] {
  const { levels } = bidi.getEmbeddingLevels(line, direction === 'auto' ? undefined : direction);
  const runs: Run[] = [];
  for (let i = 0; i < line.length; ) {
    const level = levels[i] ?? 0;
    let end = i + 1;
    while (end < line.length && levels[end] === level) {
      end++;
    }
    runs.push(...scriptRuns(line, i, end).map((run) => ({ ...run, level })));
    i = end;
  }
  // rule L2: from the highest level down to 1, turn round every stretch at that level or above
  for (let level = runs.reduce((max, run) => Math.max(max, run.level), 0); level > 0; level--) {
    for (let i = 0; i < runs.length; i++) {
      let end = i;
      while (end < runs.length && (runs[end]?.level ?? 0) >= level) {
        end++;
      }
      if (end > i) {
        runs.splice(i, end - i, ...runs.slice(i, end).reverse());
        i = end;
      }
    }
  }
  return runs;
}

/** Scripts in which a mark finds its place by an anchor of the font and by nothing else. */
const ANCHORED_SCRIPTS: ReadonlySet<string> = new Set(['Latn', 'Grek', 'Cyrl', 'Hebr', 'Arab', 'Zyyy']);

type Glyph = GlyphInfo & Partial<GlyphPosition>;

function shapeRun(font: OpenedFont, line: string, run: Run, options: ShapeOptions): readonly Cluster[] {
  const { shaper } = font;
  const buffer = new shaper.Buffer();
  buffer.addText(line, run.start, run.end - run.start);
  buffer.guessSegmentProperties();
  const rightToLeft = run.level % 2 === 1;
  buffer.setDirection(rightToLeft ? shaper.Direction.RTL : shaper.Direction.LTR);
  if (run.script !== 'Zyyy') {
    buffer.setScript(run.script);
  }
  if (options.language !== undefined) {
    buffer.setLanguage(options.language);
  }
  shaper.shape(font.shaped, buffer, fontFeatures(font, options.features ?? []));
  const glyphs: readonly Glyph[] = buffer.getGlyphInfosAndPositions();
  const pairs = rightToLeft || options.features?.some(isKernOff) ? new Map<number, number>() : font.kern;
  return gather(font, line, run, glyphs, pairs);
}

function fontFeatures(
  { shaper }: OpenedFont,
  features: readonly string[],
): InstanceType<OpenedFont['shaper']['Feature']>[] {
  return features.map((text) => {
    const feature = /^[+-]?[A-Za-z0-9]{4}(=\d+)?$/.test(text) ? shaper.Feature.fromString(text) : undefined;
    if (!feature) {
      throw new RangeError(`features: "${text}" is not an OpenType feature such as smcp, -liga or ss01=1`);
    }
    return feature;
  });
}

function isKernOff(feature: string): boolean {
  return feature === '-kern' || feature === 'kern=0';
}

// in a run, glyphs of one cluster stand together; indices rise (left to right) or fall (right to left)
function gather(
  font: OpenedFont,
  line: string,
  run: Run,
  glyphs: readonly Glyph[],
  pairs: ReadonlyMap<number, number>,
): Cluster[] {
  const starts = [...new Set(glyphs.map((g) => g.cluster)), run.end].sort((a, b) => a - b);
  const clusters: Cluster[] = [];
  for (let i = 0; i < glyphs.length; ) {
    const start = glyphs[i]?.cluster ?? 0;
    const end = starts[starts.indexOf(start) + 1] ?? run.end;
    const text = line.slice(start, end);
    const placed: PlacedGlyph[] = [];
    let looseMark = false;
    let x = 0;
    let y = 0;
    for (; glyphs[i]?.cluster === start; i++) {
      const g = glyphs[i] as Glyph;
      looseMark ||= isLooseMark(font, run.script, text, g);
      placed.push({
        glyph: g.codepoint,
        x: (x + (g.xOffset ?? 0)) / font.unitsPerEm,
        y: (y + (g.yOffset ?? 0)) / font.unitsPerEm,
      });
      x += (g.xAdvance ?? 0) + kerning(font, pairs, g.codepoint, glyphs[i + 1]?.codepoint);
      y += g.yAdvance ?? 0;
    }
    clusters.push({
      start,
      end,
      script: run.script,
      rightToLeft: run.level % 2 === 1,
      advance: x / font.unitsPerEm,
      glyphs: placed,
      looseMark,
    });
  }
  return clusters;
}

// Marks take no advance; one that the font attaches is moved from where the pen is. In other scripts than
// these, fonts often draw marks where they belong without moving them, so there only a plain mark in a font
// that places none is loose.
function isLooseMark(font: OpenedFont, script: string, text: string, g: Glyph): boolean {
  if (g.xAdvance !== 0 || !/\p{M}/u.test(text)) {
    return false;
  }
  if (ANCHORED_SCRIPTS.has(script)) {
    return !font.placesMarks || (g.xOffset === 0 && g.yOffset === 0);
  }
  const isPlainMark = (char: string): boolean =>
    /\p{M}/u.test(char) && font.shaped.nominalGlyph(char.codePointAt(0) ?? 0) === g.codepoint;
  return !font.placesMarks && [...text].some(isPlainMark);
}

function kerning(
  font: OpenedFont,
  pairs: ReadonlyMap<number, number>,
  left: number,
  right: number | undefined,
): number {
  const units = right === undefined ? 0 : (pairs.get(left * 65_536 + right) ?? 0);
  return (units * font.unitsPerEm) / font.kernUnitsPerEm;
}
