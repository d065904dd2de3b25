import type { Transform } from '@pourproof/plane';
import { MAX_COORD_MM } from '../max-coord.ts';
import type { Scene } from './scene.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';

/**
 * Whether a map can be computed with: transforms of a file may multiply to what no number holds. Told where it cannot,
 * since nothing is drawn through it.
 */
export function isDrawable(scene: Scene, element: SvgElement, toMm: Transform): boolean {
  const isDrawn = toMm.every((part) => Math.abs(part) <= MAX_PART);
  if (!isDrawn && scene.mode === 'paint') {
    scene.notices.add('number-too-large', placeOf(element), elementName(element));
  }
  return isDrawn;
}

/** Products of such parts are still numbers. */
const MAX_PART = MAX_COORD_MM ** 8;
