import {
  compose,
  packRings,
  type Region,
  type Transform,
  transformRings,
  translation,
} from '@pourproof/plane';
import { intersectRegions } from '../clip/clip-region.ts';
import { type LengthContext, userUnits } from './css-length.ts';
import { isDrawable } from './is-drawable.ts';
import type { DrawState, Scene } from './scene.ts';
import type { SvgElement } from './svg-element.ts';
import { fitViewBox, parseViewBox } from './view-box.ts';

/** How a viewport comes by its size. */
interface ViewportRules {
  /** `symbol` viewports have no place of their own. */
  readonly name: 'svg' | 'symbol';
  readonly lengths: LengthContext;
  /** Width and height from a referencing element, which win over the element's own. */
  readonly width?: string | undefined;
  readonly height?: string | undefined;
}

/**
 * Draws a nested `svg`, or a `symbol` through a reference: its viewport is placed, the view box fitted in,
 * what sticks out is clipped unless `overflow` is visible. A view box without size draws nothing.
 */
export function drawViewport(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  rules: ViewportRules,
): void {
  const { style } = state;
  const { lengths } = rules;
  const x = rules.name === 'svg' ? userUnits(style.get('x'), 'x', lengths) : 0;
  const y = rules.name === 'svg' ? userUnits(style.get('y'), 'y', lengths) : 0;
  const width = userUnits(rules.width ?? style.get('width'), 'x', lengths, lengths.viewportWidth);
  const height = userUnits(rules.height ?? style.get('height'), 'y', lengths, lengths.viewportHeight);
  if (!(width > 0) || !(height > 0)) {
    return;
  }
  const box = parseViewBox(element.attributes.get('viewBox'));
  if (box !== undefined && (box.width === 0 || box.height === 0)) {
    return;
  }
  const placed = compose(state.toMm, translation(x, y));
  const fit =
    box === undefined
      ? translation(0, 0)
      : fitViewBox(box, width, height, element.attributes.get('preserveAspectRatio'));
  if (!isDrawable(scene, element, compose(placed, fit))) {
    return;
  }
  const overflow = style.declares('overflow') ? style.get('overflow') : 'hidden';
  const clip =
    overflow === 'visible' || overflow === 'auto'
      ? state.clip
      : narrowed(state.clip, rectangle(width, height, placed));
  const inside: DrawState = {
    ...state,
    toMm: compose(placed, fit),
    viewport: box === undefined ? { width, height } : { width: box.width, height: box.height },
    layer: element.attributes.get('*:label') ?? element.attributes.get('id') ?? state.layer,
    ...(clip === undefined ? {} : { clip }),
  };
  for (const child of element.children) {
    scene.draw(scene, child, inside);
  }
}

/** A rectangle at the origin through a map, as a region in mm. */
export function rectangle(width: number, height: number, toMm: Transform, x = 0, y = 0): Region {
  const ring = [x, y, x + width, y, x + width, y + height, x, y + height];
  return transformRings(toMm, { ...packRings([ring]), fillRule: 'nonzero' });
}

/** A clip inside another. */
export function narrowed(clip: Region | undefined, inner: Region): Region {
  return clip === undefined ? inner : intersectRegions(inner, clip);
}
