import { compose } from '@pourproof/plane';
import { SHAPE_ELEMENTS, shapeGeometry } from './basic-shape.ts';
import { clipFor } from './clip-for.ts';
import type { ComputedStyle } from './computed-style.ts';
import { passesConditions } from './conditions.ts';
import { drawMarkers } from './draw-markers.ts';
import { drawShape, nodesOf } from './draw-shape.ts';
import { drawText } from './draw-text.ts';
import { drawUse } from './draw-use.ts';
import { drawViewport } from './draw-viewport.ts';
import { isDrawable } from './is-drawable.ts';
import { maskFor } from './mask-for.ts';
import { ownTransform } from './own-transform.ts';
import { type DrawState, lengthsAt, type Scene, styleUnder } from './scene.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';

/**
 * Elements that paint nothing where they stand: what they hold is only painted through references, or never.
 */
const NOT_PAINTED: ReadonlySet<string> = new Set([
  '',
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'marker',
  'pattern',
  'linearGradient',
  'radialGradient',
  'stop',
  'filter',
  'title',
  'desc',
  'metadata',
  'style',
  'view',
  'cursor',
  'color-profile',
  'font',
  'font-face',
  'glyph',
  'missing-glyph',
  'hkern',
  'vkern',
]);

const ANIMATIONS: ReadonlySet<string> = new Set([
  'animate',
  'set',
  'animateMotion',
  'animateTransform',
  'animateColor',
  'mpath',
  'discard',
]);

/**
 * Draws one element: what is hidden or not understood gets a notice, the rest is painted with its transform
 * and clips.
 */
export function drawElement(scene: Scene, element: SvgElement, parent: DrawState): void {
  if (NOT_PAINTED.has(element.name) || noticeOthers(scene, element)) {
    return;
  }
  if (!passesConditions(element)) {
    return;
  }
  const style = styleUnder(scene, element, parent.style);
  if (style.get('display').toLowerCase() === 'none') {
    noticeIfPainting(scene, 'hidden-elements', element);
    return;
  }
  const inherited: DrawState = { ...parent, style };
  const own = ownTransform(scene, element, inherited);
  const opacity = parent.opacity * style.alpha('opacity');
  if (opacity === 0 && scene.mode === 'paint') {
    scene.notices.add('invisible-paint', placeOf(element));
    return;
  }
  const state: DrawState = { ...inherited, toMm: compose(parent.toMm, own), opacity };
  if (!isDrawable(scene, element, state.toMm)) {
    return;
  }
  const clipped = clipFor(scene, element, state);
  const clip = clipped === 'empty' ? clipped : maskFor(scene, element, state, clipped);
  if (clip === 'empty') {
    return;
  }
  noticeEffects(scene, element, style);
  drawContent(scene, element, clip === undefined ? state : { ...state, clip });
}

/** Draws what an element holds, by its kind. */
export function drawContent(scene: Scene, element: SvgElement, state: DrawState): void {
  if (SHAPE_ELEMENTS.has(element.name)) {
    const { path, errorAt } = shapeGeometry(element, state.style, lengthsAt(scene, state));
    if (errorAt !== undefined && scene.mode === 'paint') {
      scene.notices.add(
        'path-data-error',
        placeOf(element),
        `${elementName(element)} at character ${errorAt + 1}${textAt(element, errorAt)}`,
      );
    }
    const paints = drawShape(scene, element, state, path, nodesOf(path));
    drawMarkers(scene, element, state, path, paints);
  } else if (element.name === 'use') {
    drawUse(scene, element, state);
  } else if (element.name === 'svg') {
    const lengths = lengthsAt(scene, state);
    drawViewport(scene, element, state, { name: 'svg', lengths });
  } else if (element.name === 'text') {
    drawText(scene, element, state);
  } else if (element.name === 'switch') {
    drawSwitch(scene, element, state);
  } else {
    const inside = { ...state, layer: layerName(element) ?? state.layer };
    for (const child of element.children) {
      scene.draw(scene, child, inside);
    }
  }
}

/** What stands in the data of a shape where it goes wrong; nothing where the data ends there. */
function textAt({ name, attributes }: SvgElement, index: number): string {
  const found = attributes.get(name === 'path' ? 'd' : 'points')?.slice(index, index + 20) ?? '';
  return found === '' ? '' : `, "${found}"`;
}

/** The first child that passes its conditions (SVG 2 §5.9). */
function drawSwitch(scene: Scene, element: SvgElement, state: DrawState): void {
  const choice = element.children.find(
    (c) => !NOT_PAINTED.has(c.name) && !ANIMATIONS.has(c.name) && passesConditions(c),
  );
  if (element.children.length > 1 && scene.mode === 'paint') {
    scene.notices.add('switch-choice', placeOf(element));
  }
  if (choice !== undefined) {
    scene.draw(scene, choice, state);
  }
}

/** Adds the notice for an element that is not drawn because of its kind; true when it is one. */
function noticeOthers(scene: Scene, element: SvgElement): boolean {
  switch (element.name) {
    case 'image':
      noticeIfPainting(scene, 'embedded-picture', element);
      return true;
    case 'foreignObject':
    case 'video':
    case 'audio':
    case 'canvas':
    case 'iframe':
      noticeIfPainting(scene, 'foreign-content', element);
      return true;
    case 'script':
      noticeIfPainting(scene, 'script-ignored', element);
      return true;
    case 'svg':
    case 'g':
    case 'a':
    case 'use':
    case 'switch':
    case 'text':
      return false;
    default:
  }
  if (SHAPE_ELEMENTS.has(element.name)) {
    return false;
  }
  if (ANIMATIONS.has(element.name)) {
    noticeIfPainting(scene, 'animation-ignored', element);
  } else if (scene.mode === 'paint') {
    scene.notices.add('unknown-element', placeOf(element), element.name.slice(0, 40));
  }
  return true;
}

function noticeIfPainting(
  scene: Scene,
  code: 'embedded-picture' | 'foreign-content' | 'script-ignored' | 'animation-ignored' | 'hidden-elements',
  element: SvgElement,
): void {
  if (scene.mode === 'paint') {
    scene.notices.add(code, placeOf(element));
  }
}

function noticeEffects(scene: Scene, element: SvgElement, style: ComputedStyle): void {
  if (scene.mode !== 'paint') {
    return;
  }
  if (style.get('filter') !== 'none') {
    scene.notices.add('filter-ignored', placeOf(element), elementName(element));
  }
  for (const child of element.children) {
    if (ANIMATIONS.has(child.name) && SHAPE_ELEMENTS.has(element.name)) {
      scene.notices.add('animation-ignored', placeOf(child));
    }
  }
}

/** The label or id of a group. */
function layerName(element: SvgElement): string | undefined {
  const name = element.attributes.get('*:label') ?? element.attributes.get('id');
  return name === '' ? undefined : name;
}
