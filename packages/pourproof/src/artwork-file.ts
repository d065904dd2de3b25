import { type Job, type JobInput, settleJob } from '@pourproof/job';
import { type Drawing, type Notice, signedArea } from '@pourproof/plane';
import { type ColourOutline, colourOutlines, type OutlinedPart } from '@pourproof/proof';
import { colourName, OUTPUT_MARK } from '@pourproof/wording';
import { drawingFrom, readingSettings } from './read-drawing.ts';
import { type Source, sourceName } from './source.ts';
import type { VetOptions } from './vet.ts';

/** Formats in which artwork is written. */
export type ArtworkFileFormat = 'svg' | 'dxf';

/** What is written. */
export interface ArtworkFileOptions extends Pick<VetOptions, 'materials' | 'shop' | 'coupons'> {
  readonly format: ArtworkFileFormat;
  /** The artwork by default; else what the bits really cut of it, or what they leave for a later round. */
  readonly part?: OutlinedPart;
}

/** A file of artwork, and what it holds. */
export interface ArtworkFile {
  readonly text: string;
  /** Area of all shapes before curves were fitted to their outlines, mm². */
  readonly areaMm2: number;
  /** Points that join lines, arcs and curves. */
  readonly nodes: number;
  /** The same of the file or font that was read, parts that lie under others included; `null` where the reader does not count them, as in DXF. */
  readonly sourceNodes: number | null;
  /** Points of the artwork as it was read, curves as short straight lines within the job's tolerance. */
  readonly pointsRead: number;
  /** Farthest that an outline lies from what was read and changed, mm; at most nine tenths of the job's tolerance. */
  readonly offMm: number;
  /** What reader and changes have to say. */
  readonly notices: readonly Notice[];
}

/** Artwork is read so much finer than the job asks, so that what is lost of the tolerance by chords is a tenth. */
const READ_FINER = 10;
/** Share of the tolerance that is left to fitted curves: chords of the reader and of changed corners have the rest. */
const FIT_SHARE = 0.8;

/**
 * The artwork of a job as a file: as it is vetted, with the outlines that the job changes (`widen`, `roundTips`, `roundCorners`), its size and the axes of its font.
 * Clean closed shapes in millimetres, one group or layer for each colour and round.
 *
 * @throws {JobError} when the job cannot be settled, or names what is not drawn
 * @throws {ArtworkError} when the source cannot be read as the job asks, or holds nothing to cut
 *
 * @example
 * ```ts
 * const { text } = await artworkFile(source, { width: '120mm', widen: '0.4mm' }, { format: 'dxf' });
 * ```
 */
export async function artworkFile(
  source: Source,
  input: JobInput,
  { format, part = 'drawn', ...beside }: ArtworkFileOptions,
): Promise<ArtworkFile> {
  const hasFont = (source.font ?? null) !== null || input.singleLine === true;
  const job = settleJob(input, { ...beside, source: source.kind, hasFont });
  const chordMm = job.toleranceMm / READ_FINER;
  const fine: Job = { ...job, toleranceMm: chordMm };
  const drawing = await drawingFrom(source, readingSettings(fine));
  const { outlines, boundsMm } = colourOutlines(drawing, fine, part);
  const { dxfFile, fittedShapes, svgFile } = await import('@pourproof/redraw');
  const tolerance = { chordMm, fitMm: FIT_SHARE * job.toleranceMm };
  const fitted = outlines.map(({ region }) => fittedShapes(region, tolerance));
  const names = [...new Set(outlines.map(({ name }) => name))];
  const file = {
    title: sourceName(source),
    mark: OUTPUT_MARK,
    boundsMm,
    groups: outlines.map((outline, k) => ({
      ...wordsOf(outline, names),
      colour: outline.paint,
      shapes: fitted[k]?.shapes ?? [],
    })),
  };
  return {
    text: format === 'svg' ? svgFile(file) : dxfFile(file),
    areaMm2: outlines.reduce((sum, { region }) => sum + signedArea(region), 0),
    nodes: fitted.reduce((sum, { nodes }) => sum + nodes, 0),
    sourceNodes: sourceNodes(drawing),
    pointsRead: outlines.reduce((sum, { region }) => sum + region.coords.length / 2, 0),
    offMm: fitted.reduce((most, { offMm }) => Math.max(most, offMm), 0) + 2 * chordMm,
    notices: drawing.notices,
  };
}

function sourceNodes({ shapes }: Drawing): number | null {
  return shapes.every(({ nodes }) => nodes !== undefined)
    ? shapes.reduce((sum, { nodes = 0 }) => sum + nodes, 0)
    : null;
}

/** Id and title of a group. */
function wordsOf({ name, round }: ColourOutline, names: readonly string[]): { id: string; title: string } {
  const colour = colourName(name, names);
  const plain = colour
    .toLowerCase()
    .replaceAll(/[^a-z\d]+/gu, '-')
    .replaceAll(/^-+|-+$/gu, '');
  // an id may not begin with a digit, and a name in another script leaves nothing
  const id = /^[a-z]/u.test(plain) ? plain : `colour-${names.indexOf(name) + 1}`;
  return round === null
    ? { id, title: colour }
    : { id: `${id}-round-${round}`, title: `${colour}, round ${round}` };
}
