import type { Drawing } from '@pourproof/plane';
import { ArtworkError } from './artwork-error.ts';

/** What is missing in artwork with nothing to cut, and what to do about it. */
const EMPTY: Readonly<Record<Drawing['format'], readonly [what: string, remedy: string]>> = {
  svg: [
    'nothing painted in it',
    'Check that the shapes have a fill or a stroke and are visible, and export the drawing again.',
  ],
  dxf: [
    'no closed outline in it',
    'Check that the outlines are closed, on layers that are on, in model space, and export the drawing again.',
  ],
  lettering: ['no letter that can be seen', 'Type the words to carve.'],
};

/**
 * Refuses a drawing without any area, such as one that holds only pictures or live text: a report on nothing
 * would find no fault with it.
 *
 * @param name what the drawing is called in the message
 * @throws {ArtworkError} `nothing-to-cut`, with what the reader noticed
 */
export function refuseEmpty(drawing: Drawing, name: string): void {
  if (drawing.shapes.some((shape) => shape.region.ringEnds.length > 0)) {
    return;
  }
  const [what, remedy] = EMPTY[drawing.format];
  const told = drawing.notices.filter((notice) => notice.code !== 'nothing-painted');
  throw new ArtworkError(
    'nothing-to-cut',
    [`${name} has ${what}, so there is nothing to cut.`, ...told.map((notice) => notice.text)].join(' '),
    remedy,
  );
}
