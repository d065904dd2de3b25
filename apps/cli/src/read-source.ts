import {
  openFont,
  readArtwork,
  readLettering,
  readStickLettering,
  refuseEmpty,
  visibleLines,
  watchedFont,
} from '@pourproof/artwork';
import { type ArtworkSize, idleFont, idleSettings } from '@pourproof/job';
import { type Drawing, inchesFromMm, type LengthUnit } from '@pourproof/plane';
import { stickStrokeMm } from '@pourproof/proof';
import type { Io } from './io.ts';
import { readInput } from './read-input.ts';
import type { Request, Source } from './request.ts';
import { UsageError } from './usage-error.ts';

/** A drawing with the name that the report calls it by. */
export interface NamedDrawing {
  readonly name: string;
  readonly drawing: Drawing;
}

/**
 * Reads a source in the size that was asked for.
 *
 * @throws {UsageError} when a file can't be read or a size is missing
 * @throws {ArtworkError} when its content can't be understood, or nothing in it can be cut
 */
export async function readSource(source: Source, request: Request, io: Io): Promise<NamedDrawing> {
  const read =
    source.kind === 'file'
      ? await readFileSource(source, request, io)
      : await readLetteringSource(source, request, io);
  const { drawing, name } = read;
  refuseEmpty(drawing, name);
  const idle = idleSettings(
    request.asked,
    drawing.format,
    source.kind === 'file' ? 0 : visibleLines(wordsOf(source.text)),
  );
  return { ...read, drawing: { ...drawing, notices: [...drawing.notices, ...idle] } };
}

async function readFileSource(
  { path, name }: Source & { readonly kind: 'file' },
  { sizing, reading, fontPath, job }: Request,
  io: Io,
): Promise<NamedDrawing> {
  const bytes = await readInput(path, 'artwork', io);
  const font = fontPath === null ? null : watchedFont(await openFont(await readInput(fontPath, 'font', io)));
  const drawing = readArtwork(bytes, name, {
    ...sizing,
    ...reading,
    toleranceMm: job.toleranceMm,
    fonts: font === null ? [] : [font.font],
  });
  const notices = font === null || font.isUsed() ? drawing.notices : [...drawing.notices, idleFont()];
  return { name, drawing: { ...drawing, notices } };
}

async function readLetteringSource(
  { text, fontPath, setting }: Source & { readonly kind: 'lettering' },
  { sizing, job }: Request,
  io: Io,
): Promise<NamedDrawing> {
  const words = wordsOf(text);
  const { isSingleLine, ...placing } = setting;
  const size = { ...placing, ...letteringSize(sizing, job.units), toleranceMm: job.toleranceMm };
  if (isSingleLine || fontPath === null) {
    return { name: text, drawing: readStickLettering(words, { ...size, strokeMm: stickStrokeMm(job) }) };
  }
  const font = await readInput(fontPath, 'font', io);
  const drawing = await readLettering(words, { ...size, font });
  return { name: text, drawing };
}

/** A line break is typed as \n. */
function wordsOf(text: string): string {
  return text.replaceAll('\\n', '\n');
}

function letteringSize(
  { widthMm, heightMm, scale, capHeightMm }: ArtworkSize,
  unit: LengthUnit,
): { capHeightMm: number } | { widthMm: number } {
  if (heightMm !== undefined || scale !== undefined) {
    throw new UsageError(
      `--${scale === undefined ? 'height' : 'scale'} does not size lettering.`,
      scale !== undefined && capHeightMm !== undefined
        ? `Leave it out and give --cap-height ${typedLength(capHeightMm * scale, unit)}, which is ${scale} times as large.`
        : 'Give --cap-height 15mm or --width 120mm.',
    );
  }
  if (capHeightMm !== undefined && widthMm !== undefined) {
    throw new UsageError('--cap-height and --width are given together.', 'Give one of them.');
  }
  if (capHeightMm !== undefined) {
    return { capHeightMm };
  }
  if (widthMm !== undefined) {
    return { widthMm };
  }
  throw new UsageError('--text needs a size.', 'Add --cap-height 15mm, or --width 120mm.');
}

/** A length as it is typed, never less than it is. */
function typedLength(mm: number, unit: LengthUnit): string {
  return unit === 'in'
    ? `${Math.ceil(inchesFromMm(mm) * 1000 - 1e-6) / 1000}in`
    : `${Math.ceil(mm * 100 - 1e-6) / 100}mm`;
}
