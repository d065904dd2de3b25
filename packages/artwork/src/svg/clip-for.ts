import { compose, isEmptyBounds, type Region, type Transform } from '@pourproof/plane';
import { intersectRegions, uniteRegions } from '../clip/clip-region.ts';
import { fillRings } from '../path/fill-rings.ts';
import { clipBox } from './clip-box.ts';
import { clipShape } from './clip-shape.ts';
import { narrowed } from './draw-viewport.ts';
import { objectBox } from './object-box.ts';
import { ownTransform } from './own-transform.ts';
import { findReferenced, urlAddress } from './references.ts';
import { type DrawState, lengthsAt, type Scene, styleAround, styleUnder } from './scene.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';

/**
 * The clip of an element: what is around it narrowed by its own `clip-path` (CSS Masking 1 §6), in mm.
 * `empty` when nothing is left, `undefined` when nothing clips. The state's map is the element's own user
 * space.
 */
export function clipFor(scene: Scene, element: SvgElement, state: DrawState): Region | 'empty' | undefined {
  const value = state.style.get('clip-path');
  if (value === 'none' || scene.mode === 'box') {
    return state.clip;
  }
  const address = urlAddress(value);
  if (address === undefined) {
    return shapeClip(scene, element, state, value);
  }
  const clipPath = findReferenced(scene, address, element);
  if (clipPath?.name !== 'clipPath') {
    return state.clip;
  }
  const own = clipRegion(scene, clipPath, element, state);
  if (own === undefined) {
    return state.clip;
  }
  const clip = narrowed(state.clip, own);
  return clip.ringEnds.length === 0 ? 'empty' : clip;
}

/** The clip of an element narrowed by a CSS basic shape, by a box, or by both words in either order. */
function shapeClip(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  value: string,
): Region | 'empty' | undefined {
  const [, before, shape = '', after] = CLIP_VALUE.exec(value.trim()) ?? [];
  const word = (before ?? after ?? '').toLowerCase();
  const isShape = shape !== '' && (before === undefined || after === undefined);
  if (!isShape && (shape !== '' || word === '')) {
    return unknownClip(scene, element, state, value);
  }
  const box = clipBox(scene, element, state, word);
  const found = isShape
    ? clipShape(shape, box, lengthsAt(scene, state))
    : clipShape('inset(0)', box, lengthsAt(scene, state));
  if (found === undefined) {
    return unknownClip(scene, element, state, value);
  }
  fillRings(scene.writer, found.path, state.toMm, scene.options.toleranceMm);
  const shown = scene.writer.takeRegion(scene.arena, found.fillRule);
  if (!shown.coords.every(Number.isFinite)) {
    return unknownClip(scene, element, state, value);
  }
  const clip = narrowed(state.clip, shown);
  return clip.ringEnds.length === 0 ? 'empty' : clip;
}

/** A shape with the word for its box before or after it, or such a word alone. */
const CLIP_VALUE = /^(?:([a-z]+-box)\s*)?([a-z]+\([\s\S]*\))?(?:\s*([a-z]+-box))?$/i;

function unknownClip(scene: Scene, element: SvgElement, state: DrawState, value: string): Region | undefined {
  scene.notices.add('clip-unknown', placeOf(element), value.slice(0, 40));
  return state.clip;
}

/**
 * What a `clipPath` element lets through, in mm; `undefined` for one that refers to itself, which counts as
 * absent.
 */
function clipRegion(
  scene: Scene,
  clipPath: SvgElement,
  element: SvgElement,
  state: DrawState,
): Region | undefined {
  if (state.within.includes(clipPath)) {
    scene.notices.add('reference-cycle', placeOf(clipPath), elementName(clipPath));
    return undefined;
  }
  const style = styleUnder(scene, clipPath, styleAround(scene, clipPath));
  // the element's own transform acts on its contents, which the units belong to (CSS Masking 1 §6.1)
  const ownToMm = compose(state.toMm, ownTransform(scene, clipPath, { ...state, style }));
  const inside: DrawState = {
    ...state,
    style,
    toMm: compose(ownToMm, clipUnits(scene, clipPath, element, state)),
    opacity: 1,
    within: [...state.within, clipPath],
  };
  const { clip: _outer, ...unclipped } = inside;
  const cutting: Scene = { ...scene, mode: 'clip', painted: [] };
  for (const child of clipPath.children) {
    // groups and nested viewports may not stand in a clip path (CSS Masking 1 §6.1)
    if (child.name !== 'g' && child.name !== 'svg' && child.name !== 'switch' && child.name !== 'a') {
      scene.draw(cutting, child, unclipped);
    }
  }
  const union = uniteRegions(cutting.painted.map((p) => p.shape.region));
  const further = clipFor(scene, clipPath, { ...unclipped, toMm: state.toMm });
  if (further === 'empty') {
    return uniteRegions([]);
  }
  return further === undefined ? union : intersectRegions(union, further);
}

/** For `objectBoundingBox` the map from the unit square to the element's box. */
function clipUnits(scene: Scene, clipPath: SvgElement, element: SvgElement, state: DrawState): Transform {
  if (clipPath.attributes.get('clipPathUnits') !== 'objectBoundingBox') {
    return [1, 0, 0, 1, 0, 0];
  }
  const b = objectBox(scene, element, state);
  return isEmptyBounds(b) ? [0, 0, 0, 0, 0, 0] : [b[2] - b[0], 0, 0, b[3] - b[1], b[0], b[1]];
}
