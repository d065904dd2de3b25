import type { Transform } from '@pourproof/plane';
import { MAX_COORD_MM } from '../max-coord.ts';
import type { Path } from '../path/path.ts';
import { pathReach } from '../path/path-reach.ts';
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

/**
 * Whether the curves of a shape can be computed with; told where they cannot. Asked before they become lines: one that
 * overflows there leaves no points by which it could be noticed.
 */
export function isWithinReach(scene: Scene, element: SvgElement, toMm: Transform, path: Path): boolean {
  const isWithin = pathReach(path, toMm) <= MAX_COORD_MM;
  if (!isWithin) {
    scene.notices.add('number-too-large', placeOf(element), elementName(element));
  }
  return isWithin;
}
