import { type Bounds, EMPTY_BOUNDS, IDENTITY, joinBounds } from '@pourproof/plane';
import type { DrawState, Scene } from './scene.ts';
import type { SvgElement } from './svg-element.ts';

/**
 * The element's object bounding box in its own user space (SVG 2 §8.10): the geometry of all shapes in it
 * without strokes, invisible ones included, those that are not displayed left out; clips do not count.
 */
export function objectBox(scene: Scene, element: SvgElement, state: DrawState): Bounds {
  const measuring: Scene = { ...scene, mode: 'box', boxes: [], painted: [] };
  scene.drawContent(measuring, element, { ...state, toMm: IDENTITY });
  return measuring.boxes.reduce(joinBounds, EMPTY_BOUNDS);
}
