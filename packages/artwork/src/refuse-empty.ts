import type { Drawing } from '@pourproof/plane';
import { fileRefusal } from './file-refusals.ts';

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
  const told = drawing.notices.filter((notice) => notice.code !== 'nothing-painted');
  const noticed = told.map((notice) => notice.text);
  throw fileRefusal('nothing-to-cut', { name, format: drawing.format, noticed });
}
