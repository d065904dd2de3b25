import { compose, IDENTITY } from '@pourproof/plane';
import { clipFor } from './clip-for.ts';
import { isDrawable } from './is-drawable.ts';
import { maskFor } from './mask-for.ts';
import { ownTransform } from './own-transform.ts';
import type { PageSize } from './page-size.ts';
import type { DrawState, Scene } from './scene.ts';
import { elementName, placeOf } from './svg-element.ts';
import { fitViewBox } from './view-box.ts';

/**
 * Draws the outermost `svg`: its view box is fitted into the page. Unlike a viewer it does not clip at the
 * page's edge, so that nothing is lost in silence; what lies outside is noticed later.
 */
export function drawRoot(scene: Scene, page: PageSize, state: DrawState): void {
  const { root } = scene;
  if (state.style.get('display').toLowerCase() === 'none') {
    scene.notices.add('hidden-elements', placeOf(root));
    return;
  }
  if (state.opacity === 0) {
    scene.notices.add('invisible-paint', placeOf(root));
    return;
  }
  const { viewBox, width, height } = page;
  const fit =
    viewBox === undefined
      ? IDENTITY
      : fitViewBox(viewBox, width, height, root.attributes.get('preserveAspectRatio'));
  const inside = {
    ...state,
    viewport: viewBox === undefined ? state.viewport : { width: viewBox.width, height: viewBox.height },
    toMm: compose(state.toMm, compose(ownTransform(scene, root, state), fit)),
  };
  if (!isDrawable(scene, root, inside.toMm)) {
    return;
  }
  const clipped = clipFor(scene, root, inside);
  const clip = clipped === 'empty' ? clipped : maskFor(scene, root, inside, clipped);
  if (clip === 'empty') {
    return;
  }
  if (state.style.get('filter') !== 'none') {
    scene.notices.add('filter-ignored', placeOf(root), elementName(root));
  }
  for (const child of root.children) {
    scene.draw(scene, child, clip === undefined ? inside : { ...inside, clip });
  }
}
