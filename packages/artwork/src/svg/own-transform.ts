import { compose, IDENTITY, isEmptyBounds, type Transform, translation } from '@pourproof/plane';
import { lengthList, parseLength, userUnits } from './css-length.ts';
import { objectBox } from './object-box.ts';
import { type DrawState, lengthsAt, type Scene } from './scene.ts';
import { placeOf, type SvgElement } from './svg-element.ts';
import { parseTransformList } from './transform-list.ts';

/** A box that transforms refer to, in user units. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const WORDS: ReadonlyMap<string, string> = new Map([
  ['left', '0%'],
  ['top', '0%'],
  ['center', '50%'],
  ['right', '100%'],
  ['bottom', '100%'],
]);

/**
 * The element's own map from its user space to its parent's, about its transform origin (CSS Transforms 1 §4
 * and §5).
 */
export function ownTransform(scene: Scene, element: SvgElement, state: DrawState): Transform {
  const { style } = state;
  const text = style.get('transform');
  if (text === '' || text === 'none') {
    return IDENTITY;
  }
  const byBox = /^(?:fill-box|content-box|stroke-box|border-box)$/i.test(style.get('transform-box'));
  const box = byBox ? ownBox(scene, element, state) : { x: 0, y: 0, ...state.viewport };
  const transform = parseTransformList(text, box);
  if (transform === undefined) {
    if (scene.mode === 'paint') {
      scene.notices.add('transform-ignored', placeOf(element), `"${text.slice(0, 40)}"`);
    }
    return IDENTITY;
  }
  const origin = style.get('transform-origin');
  if (origin === '' && !byBox) {
    return transform;
  }
  const [x, y] = originIn(scene, state, origin === '' ? '0 0' : origin, box);
  return compose(translation(x, y), compose(transform, translation(-x, -y)));
}

function ownBox(scene: Scene, element: SvgElement, state: DrawState): Box {
  const b = objectBox(scene, element, state);
  return isEmptyBounds(b)
    ? { x: 0, y: 0, width: 0, height: 0 }
    : { x: b[0], y: b[1], width: b[2] - b[0], height: b[3] - b[1] };
}

/** Words for a side stand in either order; one value alone is the horizontal one. */
function originIn(scene: Scene, state: DrawState, text: string, box: Box): [number, number] {
  let [first = '50%', second = '50%'] = lengthList(text.toLowerCase(), /\s/u);
  if (/^(?:top|bottom)$/.test(first) || /^(?:left|right)$/.test(second)) {
    [first, second] = [second, first];
  }
  const context = { ...lengthsAt(scene, state), viewportWidth: box.width, viewportHeight: box.height };
  const x = WORDS.get(first) ?? first;
  const y = WORDS.get(second) ?? second;
  if (parseLength(x) === undefined || parseLength(y) === undefined) {
    return [0, 0];
  }
  return [box.x + userUnits(x, 'x', context), box.y + userUnits(y, 'y', context)];
}
