import type { Picture, PicturedGrade, PicturedLevelling } from '@pourproof/proof';
import { type Art, artOf } from '../draw/art-shapes.ts';

/** What levelling leaves, without its lines. */
export interface SheetLevelling extends Omit<PicturedLevelling, 'grades'> {
  /** Every grade that something is of, the gravest first. */
  readonly grades: readonly (Pick<PicturedGrade, 'grade' | 'lengthMm'> & { readonly areaCount: number })[];
}

/** The picture of a proof as the page needs it: all that is long is packed in {@link Art}. */
export interface SheetPicture extends Pick<Picture, 'blocks' | 'obstacles' | 'boundsMm'> {
  readonly art: Art;
  /** The same lines, for the worker that paints them to take over. */
  readonly artToGive: Art;
  readonly levelling: SheetLevelling;
  /** Distance between lines of equal depth; `null` where there are none. */
  readonly depthStepMm: number | null;
}

/** A picture made lean, in the worker. */
export function sheetPicture(picture: Picture): SheetPicture {
  const { blocks, obstacles, boundsMm, levelling, depths } = picture;
  const [first] = depths;
  const art = artOf(picture);
  return {
    blocks,
    obstacles,
    boundsMm,
    art,
    artToGive: structuredClone(art),
    levelling: {
      ...levelling,
      grades: levelling.grades
        .filter(({ lines, outlines }) => lines.length + outlines.length > 0)
        .map(({ grade, lengthMm, outlines }) => ({ grade, lengthMm, areaCount: outlines.length })),
    },
    depthStepMm: first?.depthMm ?? null,
  };
}
