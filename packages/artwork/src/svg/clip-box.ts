import {
  type Bounds,
  compose,
  EMPTY_BOUNDS,
  IDENTITY,
  isEmptyBounds,
  joinBounds,
  ringsBounds,
} from '@pourproof/plane';
import { NoticeBook } from '../notice-book.ts';
import { CoordArena } from '../path/coord-arena.ts';
import { inverseTransform } from '../path/inverse-transform.ts';
import { largestScale } from '../path/largest-scale.ts';
import type { ShapeBox } from './clip-shape.ts';
import { objectBox } from './object-box.ts';
import type { DrawState, Scene } from './scene.ts';
import type { SvgElement } from './svg-element.ts';
import { SVG_NOTICES } from './svg-notices.ts';

/**
 * The reference box that a word names for a shape in `clip-path` (CSS Masking 1 §6.1), in the element's user
 * units: `view-box` is the nearest viewport's, `fill-box` and the words for inner boxes of pages the object's
 * box, all others, and no word, the object's box with its strokes.
 */
export function clipBox(scene: Scene, element: SvgElement, state: DrawState, word: string): ShapeBox {
  if (word === 'view-box') {
    return { x: 0, y: 0, ...state.viewport };
  }
  const isInner = /^(?:fill-box|content-box|padding-box)$/.test(word);
  const b = isInner ? objectBox(scene, element, state) : strokeBox(scene, element, state);
  return isEmptyBounds(b)
    ? { x: 0, y: 0, width: 0, height: 0 }
    : { x: b[0], y: b[1], width: b[2] - b[0], height: b[3] - b[1] };
}

/** The box of what an element fills and strokes, in its user units, to the tolerance of flattening. */
function strokeBox(scene: Scene, element: SvgElement, state: DrawState): Bounds {
  const scale = largestScale(state.toMm);
  if (!(scale > 0)) {
    return EMPTY_BOUNDS;
  }
  const drawing: Scene = {
    ...scene,
    notices: new NoticeBook(SVG_NOTICES),
    painted: [],
    arena: new CoordArena(),
    options: { ...scene.options, toleranceMm: scene.options.toleranceMm / scale, refuseBounds: undefined },
  };
  const { clip: _clip, ...open } = state;
  const hostToMm = compose(inverseTransform(state.toMm), state.hostToMm);
  scene.drawContent(drawing, element, { ...open, toMm: IDENTITY, hostToMm, opacity: 1 });
  return drawing.painted.reduce(
    (box, { shape }) => joinBounds(box, ringsBounds(shape.region)),
    objectBox(scene, element, state),
  );
}
