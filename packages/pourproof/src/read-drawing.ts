import { artworkFormat, refuseEmpty, refuseSize, sizeGuard } from '@pourproof/artwork/format';
import type { LayoutOptions, LetteringFont } from '@pourproof/artwork/lettering';
import {
  type ArtworkSize,
  type FileReading,
  idleFont,
  idleSettings,
  type Job,
  type LetteringSetting,
  type OutlineChange,
} from '@pourproof/job';
import { limits } from '@pourproof/materials';
import type { Drawing } from '@pourproof/plane';
import { stickStrokeMm } from '@pourproof/proof';
import { fontMissing } from './font-missing.ts';
import { type Source, sourceName, wordsOf } from './source.ts';

/** Everything in a job that changes how its artwork is read: jobs that agree in it have the same drawing of a source. */
export interface ReadingSettings {
  readonly size: ArtworkSize;
  readonly file: FileReading;
  readonly outlines: OutlineChange;
  /** Layers that the job counts as colours, where outlines are changed. */
  readonly colourLayers: readonly string[];
  readonly lettering: LetteringSetting;
  readonly toleranceMm: number;
  /** Width of the strokes of single-line letters. */
  readonly strokeMm: number;
  /** Whether the job names a font. */
  readonly isFontNamed: boolean;
}

/** What a settled job says of how its artwork is read. */
export function readingSettings(job: Job): ReadingSettings {
  return {
    size: job.size,
    file: job.fileReading,
    outlines: job.outlines,
    colourLayers:
      Object.keys(job.outlines).length === 0
        ? []
        : [...job.colourOf.map(({ drawn }) => drawn), ...job.rounds.flatMap(({ drawn }) => drawn)],
    lettering: job.lettering,
    toleranceMm: job.toleranceMm,
    strokeMm: stickStrokeMm(job),
    isFontNamed: job.given.includes('font'),
  };
}

/**
 * Reads a source in the size and the way that a job asks for. Readers are loaded when they are first needed.
 *
 * @param job settled for this kind of source, see `settleJob`
 * @throws {ArtworkError} when the file, the font or the text cannot be used, or when there is nothing to cut
 *
 * @example
 * ```ts
 * const job = settleJob({ width: '120mm' }, { source: 'file' });
 * const drawing = await readDrawing({ kind: 'file', name: 'sign.svg', bytes }, job);
 * const { report } = vetDrawing(drawing, 'sign.svg', job);
 * ```
 */
export async function readDrawing(source: Source, job: Job): Promise<Drawing> {
  return drawingFrom(source, readingSettings(job));
}

/** The same from the settings alone. */
export async function drawingFrom(source: Source, settings: ReadingSettings): Promise<Drawing> {
  const drawing =
    source.kind === 'file' ? await readFile(source, settings) : await readWords(source, settings);
  refuseEmpty(drawing, sourceName(source));
  refuseSize(drawing, sourceName(source));
  const changed = await withOutlines(drawing, settings);
  refuseEmpty(changed, sourceName(source));
  return changed;
}

async function withOutlines(drawing: Drawing, { outlines, colourLayers }: ReadingSettings): Promise<Drawing> {
  const { widenMm = 0, leastStrokeMm = 0, roundTipsMm = 0, roundCornersMm = 0, colourWallMm = 0 } = outlines;
  const { joins = 'mitre', keepApartMm = limits.wallAlongGrain.value } = outlines;
  const change = { widenMm, leastStrokeMm, roundTipsMm, roundCornersMm, colourWallMm };
  if (Object.values(change).every((mm) => mm === 0)) {
    return drawing;
  }
  const { changeDrawing } = await import('@pourproof/redraw');
  return changeDrawing(drawing, { ...change, joins, keepApartMm, colourLayers });
}

/** A drawing with a notice for each setting of the job that changes nothing for it. */
export async function withIdleNotices(drawing: Drawing, source: Source, job: Job): Promise<Drawing> {
  const lines = source.kind === 'lettering' ? await visibleLinesOf(source.text) : 0;
  return { ...drawing, notices: [...drawing.notices, ...idleSettings(job, drawing.format, lines)] };
}

async function visibleLinesOf(text: string): Promise<number> {
  const { visibleLines } = await import('@pourproof/artwork/lettering');
  return visibleLines(wordsOf(text));
}

async function readFile(
  { bytes, name, font }: Source & { readonly kind: 'file' },
  { size, file, toleranceMm, isFontNamed }: ReadingSettings,
): Promise<Drawing> {
  if (isFontNamed && (font ?? null) === null) {
    throw fontMissing();
  }
  const watched = font === undefined || font === null ? null : await openWatched(font);
  const fonts = watched === null ? [] : [watched.font];
  const options = { toleranceMm, ...size, ...file, fonts, refuseBounds: sizeGuard(name) };
  const drawing =
    artworkFormat(bytes, name) === 'svg'
      ? (await import('@pourproof/artwork/svg')).readSvg(bytes, options)
      : (await import('@pourproof/artwork/dxf')).readDxf(bytes, options);
  return watched === null || watched.isUsed()
    ? drawing
    : { ...drawing, notices: [...drawing.notices, idleFont()] };
}

async function openWatched(
  font: Uint8Array,
): Promise<{ readonly font: LetteringFont; readonly isUsed: () => boolean }> {
  const { openFont, watchedFont } = await import('@pourproof/artwork/lettering');
  return watchedFont(await openFont(font));
}

async function readWords(
  { text, font }: Source & { readonly kind: 'lettering' },
  { size, lettering, toleranceMm, strokeMm }: ReadingSettings,
): Promise<Drawing> {
  const words = wordsOf(text);
  const { isSingleLine, axes, capHeightMm = 0, ...placing } = lettering;
  const { readLettering, readStickLettering } = await import('@pourproof/artwork/lettering');
  const options: LayoutOptions & { toleranceMm: number } = {
    ...placing,
    ...(size.widthMm === undefined ? { capHeightMm } : { widthMm: size.widthMm }),
    toleranceMm,
  };
  return isSingleLine || font === null
    ? readStickLettering(words, { ...options, strokeMm })
    : readLettering(words, { ...options, ...(axes === undefined ? {} : { axes }), font });
}
