import { compose, IDENTITY, isEmptyBounds, type Region, type Transform } from '@pourproof/plane';
import { subtractRegions, uniteRegions } from '../clip/clip-region.ts';
import { NoticeBook } from '../notice-book.ts';
import { parseLength, userUnits } from './css-length.ts';
import { narrowed, rectangle } from './draw-viewport.ts';
import { objectBox } from './object-box.ts';
import { findReferenced, urlAddress } from './references.ts';
import { type DrawState, lengthsAt, type Painted, type Scene, styleAround, styleUnder } from './scene.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';
import { SVG_NOTICES } from './svg-notices.ts';

/** Notices within a mask that mean its light is neither full nor none somewhere. */
const SHADES = [
  'gradient-fill',
  'pattern-fill',
  'mask-ignored',
  'filter-ignored',
  'embedded-picture',
  'foreign-content',
];

/**
 * The clip of an element narrowed by its mask (CSS Masking 1 §7), in mm. A mask made of opaque white and
 * black alone is a clip and taken exactly; any other is left out with a notice. `empty` when nothing is left.
 */
export function maskFor(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  clip: Region | undefined,
): Region | 'empty' | undefined {
  const value = state.style.get('mask');
  if (value === 'none' || scene.mode !== 'paint') {
    return clip;
  }
  const address = urlAddress(value);
  const mask = address === undefined ? undefined : findReferenced(scene, address, element);
  if (address !== undefined && mask?.name !== 'mask') {
    return clip;
  }
  const lit =
    mask === undefined || state.within.includes(mask) ? undefined : litRegion(scene, mask, element, state);
  if (lit === undefined) {
    scene.notices.add('mask-ignored', placeOf(element), elementName(element));
    return clip;
  }
  const inside = narrowed(clip, lit);
  return inside.ringEnds.length === 0 ? 'empty' : inside;
}

/** Where a mask lets all through, in mm; `undefined` when it lets anything through in part. */
function litRegion(
  scene: Scene,
  mask: SvgElement,
  element: SvgElement,
  state: DrawState,
): Region | undefined {
  const style = styleUnder(scene, mask, styleAround(scene, mask));
  if (style.get('mask') !== 'none' || style.get('clip-path') !== 'none') {
    return undefined;
  }
  const b = objectBox(scene, element, state);
  const box: Transform = isEmptyBounds(b) ? [0, 0, 0, 0, 0, 0] : [b[2] - b[0], 0, 0, b[3] - b[1], b[0], b[1]];
  const unitsOf = (name: string, usual: string): Transform =>
    (mask.attributes.get(name) ?? usual) === 'userSpaceOnUse' ? IDENTITY : box;
  const { clip: _outer, ...open } = state;
  const inside: DrawState = {
    ...open,
    style,
    toMm: compose(state.toMm, unitsOf('maskContentUnits', 'userSpaceOnUse')),
    opacity: 1,
    within: [...state.within, mask],
  };
  const notices = new NoticeBook(SVG_NOTICES);
  // a mask may be as large as it likes
  const options = { ...scene.options, refuseBounds: undefined };
  const lighting: Scene = { ...scene, options, notices, painted: [], open: [] };
  for (const child of mask.children) {
    scene.draw(lighting, child, inside);
  }
  if (notices.notices().some(({ code }) => SHADES.includes(code))) {
    return undefined;
  }
  const lit = litBy(lighting.painted, style.get('mask-type').toLowerCase() === 'alpha');
  const area = maskArea(scene, mask, state, unitsOf('maskUnits', 'objectBoundingBox'));
  return lit !== undefined && area.coords.every(Number.isFinite) ? narrowed(lit, area) : undefined;
}

/** White lights, black puts out, in painter's order; by alpha everything lights. */
function litBy(painted: readonly Painted[], byAlpha: boolean): Region | undefined {
  let lit = uniteRegions([]);
  for (const { opaque, shape } of painted) {
    const { colour, region } = shape;
    if (!opaque || !(byAlpha || colour === '#ffffff' || colour === '#000000')) {
      return undefined;
    }
    lit = byAlpha || colour === '#ffffff' ? uniteRegions([lit, region]) : subtractRegions(lit, [region]);
  }
  return lit;
}

/** The rectangle beyond which a mask lets nothing through: the box and a tenth around it unless stated. */
function maskArea(scene: Scene, mask: SvgElement, state: DrawState, units: Transform): Region {
  const byBox = units !== IDENTITY;
  const lengths = lengthsAt(scene, state);
  const side = (name: string, axis: 'x' | 'y', usual: string): number => {
    const given = mask.attributes.get(name);
    const text = given !== undefined && parseLength(given) !== undefined ? given : usual;
    const length = parseLength(text);
    // in units of the box a percentage is a part of it
    const ofBox = byBox && /^(?:%|math)$/.test(length?.unit ?? '');
    return userUnits(text, axis, ofBox ? { ...lengths, viewportWidth: 1, viewportHeight: 1 } : lengths);
  };
  const toMm = compose(state.toMm, units);
  return rectangle(
    side('width', 'x', '120%'),
    side('height', 'y', '120%'),
    toMm,
    side('x', 'x', '-10%'),
    side('y', 'y', '-10%'),
  );
}
