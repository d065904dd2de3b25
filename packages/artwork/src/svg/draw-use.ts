import { compose, translation } from '@pourproof/plane';
import { userUnits } from './css-length.ts';
import { drawViewport } from './draw-viewport.ts';
import { findReferenced, hrefOf } from './references.ts';
import { type DrawState, lengthsAt, type Scene, styleUnder } from './scene.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';
import { svgRefusal } from './svg-refusals.ts';

/**
 * Most elements drawn through references in one file: drawings stay far below, files made to exhaust a
 * computer do not.
 */
const MAX_REUSE = 200_000;

/** Most references nested in one another. */
const MAX_REUSE_DEPTH = 60;

/** Draws the element that a `use` refers to, in its place (SVG 2 §5.5). */
export function drawUse(scene: Scene, element: SvgElement, state: DrawState): void {
  const href = hrefOf(element);
  const target = href === undefined ? undefined : findReferenced(scene, href, element);
  if (target === undefined) {
    return;
  }
  if (state.within.includes(target) || contains(target, element) || state.within.length >= MAX_REUSE_DEPTH) {
    if (scene.mode === 'paint') {
      scene.notices.add('reference-cycle', placeOf(element), elementName(element));
    }
    return;
  }
  countReuse(scene, element);
  const lengths = lengthsAt(scene, state);
  const x = userUnits(state.style.get('x'), 'x', lengths);
  const y = userUnits(state.style.get('y'), 'y', lengths);
  const placed: DrawState = {
    ...state,
    toMm: compose(state.toMm, translation(x, y)),
    within: [...state.within, target],
  };
  if (target.name !== 'symbol' && target.name !== 'svg') {
    scene.draw(scene, target, placed);
    return;
  }
  const own = (name: string): string | undefined => {
    const value = state.style.get(name);
    return value === 'auto' ? undefined : value;
  };
  const style = styleUnder(scene, target, state.style);
  if (style.get('display').toLowerCase() === 'none' && target.name === 'svg') {
    return;
  }
  drawViewport(
    scene,
    target,
    { ...placed, style },
    { name: target.name, lengths, width: own('width'), height: own('height') },
  );
}

/** Counts an element drawn through a reference. */
export function countReuse(scene: Scene, element: SvgElement): void {
  scene.reuse.count++;
  if (scene.reuse.count > MAX_REUSE) {
    throw svgRefusal(
      'svg-reuse-too-large',
      { most: MAX_REUSE },
      { line: element.line, column: element.column },
    );
  }
}

function contains(outer: SvgElement, inner: SvgElement): boolean {
  for (let at: SvgElement | undefined = inner; at !== undefined; at = at.parent) {
    if (at === outer) {
      return true;
    }
  }
  return false;
}
