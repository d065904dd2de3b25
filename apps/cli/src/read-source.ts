import { openFont, readArtwork, readLettering, readStickLettering } from '@pourproof/artwork';
import type { Drawing } from '@pourproof/plane';
import type { Io } from './io.ts';
import { readInput } from './read-input.ts';
import type { Request, Sizing, Source } from './request.ts';
import { UsageError } from './usage-error.ts';

/** A drawing with the name that the report calls it by. */
export interface NamedDrawing {
  readonly name: string;
  readonly drawing: Drawing;
}

/**
 * Reads a source in the size that was asked for.
 *
 * @throws {UsageError} when a file can't be read, a size is missing, or nothing in it is painted
 * @throws {ArtworkError} when its content can't be understood
 */
export async function readSource(source: Source, request: Request, io: Io): Promise<NamedDrawing> {
  const read =
    source.kind === 'file'
      ? await readFileSource(source, request, io)
      : await readLetteringSource(source, request, io);
  if (read.drawing.shapes.every((shape) => shape.region.ringEnds.length === 0)) {
    const told = read.drawing.notices.filter((notice) => notice.code !== 'nothing-painted');
    throw new UsageError(
      [
        `${read.name} has nothing painted in it, so there is nothing to cut.`,
        ...told.map((notice) => notice.text),
      ].join(' '),
      'Check that the shapes have a fill or a stroke and are visible, and export the drawing again.',
    );
  }
  return read;
}

async function readFileSource(
  { path, name }: Source & { readonly kind: 'file' },
  { sizing, reading, fontPath, job }: Request,
  io: Io,
): Promise<NamedDrawing> {
  const bytes = await readInput(path, 'artwork', io);
  const fonts = fontPath === null ? [] : [await openFont(await readInput(fontPath, 'font', io))];
  const drawing = readArtwork(bytes, name, { ...sizing, ...reading, toleranceMm: job.toleranceMm, fonts });
  return { name, drawing };
}

async function readLetteringSource(
  { text, fontPath, capHeightMm, setting }: Source & { readonly kind: 'lettering' },
  { sizing, job }: Request,
  io: Io,
): Promise<NamedDrawing> {
  const words = text.replaceAll('\\n', '\n');
  const { isSingleLine, ...placing } = setting;
  const size = { ...placing, ...letteringSize(sizing, capHeightMm), toleranceMm: job.toleranceMm };
  if (isSingleLine || fontPath === null) {
    // flattened strokes weave by the tolerance on either side; the bit must still fit where they are narrowest
    const strokeMm = Math.min(...job.bits.map((bit) => bit.diameterMm)) + 2 * job.toleranceMm;
    return { name: text, drawing: readStickLettering(words, { ...size, strokeMm }) };
  }
  const font = await readInput(fontPath, 'font', io);
  const drawing = await readLettering(words, { ...size, font });
  return { name: text, drawing };
}

function letteringSize(
  sizing: Sizing,
  capHeightMm: number | null,
): { capHeightMm: number } | { widthMm: number } {
  if (sizing.heightMm !== undefined || sizing.scale !== undefined) {
    throw new UsageError(
      `--${sizing.scale === undefined ? 'height' : 'scale'} does not size lettering.`,
      'Give --cap-height 15mm or --width 120mm.',
    );
  }
  if (capHeightMm !== null && sizing.widthMm !== undefined) {
    throw new UsageError('--cap-height and --width are given together.', 'Give one of them.');
  }
  if (capHeightMm !== null) {
    return { capHeightMm };
  }
  if (sizing.widthMm !== undefined) {
    return { widthMm: sizing.widthMm };
  }
  throw new UsageError('--text needs a size.', 'Add --cap-height 15mm, or --width 120mm.');
}
