import type { Path } from '../path/path.ts';
import { measureSegment } from '../stroke/segment-length.ts';
import type { StrokeStyle } from '../stroke/stroke-outline.ts';
import { lengthList, parseAlpha, userUnits } from './css-length.ts';
import { type DrawState, lengthsAt, type Scene } from './scene.ts';
import { placeOf, type SvgElement } from './svg-element.ts';

/** The stroke properties of an element, lengths in user units. */
export function strokeStyle(scene: Scene, element: SvgElement, { style, ...rest }: DrawState): StrokeStyle {
  const join = style.get('stroke-linejoin').toLowerCase();
  if (join === 'arcs') {
    scene.notices.add('stroke-join-arcs', placeOf(element));
  }
  const cap = style.get('stroke-linecap').toLowerCase();
  return {
    // a math function may come out below 0, which stands for 0 (CSS Values 4 §10.12)
    width: Math.max(
      0,
      userUnits(style.get('stroke-width'), 'other', lengthsAt(scene, { style, ...rest }), 1),
    ),
    cap: cap === 'round' || cap === 'square' ? cap : 'butt',
    join: join === 'round' || join === 'bevel' || join === 'miter-clip' ? join : 'miter',
    miterLimit: Math.max(1, parseAlpha(style.get('stroke-miterlimit')) ?? 4),
  };
}

/** Dashes are no longer than this, in user units: longer than any path, and their sum is still a number. */
const LONGEST_DASH = 1e100;

/**
 * The dash pattern in user units, made even by repeating it, with `pathLength` worked in; `undefined` for a
 * stroke without gaps: `none`, a sum of 0, or anything negative (SVG 2 §13.5.6).
 */
export function strokeDashes(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  path: Path,
): { readonly pattern: readonly number[]; readonly offset: number } | undefined {
  const text = state.style.get('stroke-dasharray');
  if (text.toLowerCase() === 'none') {
    return undefined;
  }
  const context = lengthsAt(scene, state);
  const lengths = lengthList(text).map((part) =>
    Math.min(LONGEST_DASH, userUnits(part, 'other', context, Number.NaN)),
  );
  const sum = lengths.reduce((total, l) => total + l, 0);
  if (lengths.some((l) => !(l >= 0)) || !(sum > 0)) {
    return undefined;
  }
  const factor = pathLengthFactor(element, path);
  if (factor === undefined) {
    return undefined;
  }
  const even = lengths.length % 2 === 0 ? lengths : [...lengths, ...lengths];
  return {
    pattern: even.map((l) => l * factor),
    offset: userUnits(state.style.get('stroke-dashoffset'), 'other', context) * factor,
  };
}

/** True length over the author's `pathLength`; a `pathLength` of 0 leaves no room for dashes. */
function pathLengthFactor(element: SvgElement, path: Path): number | undefined {
  const text = element.attributes.get('pathLength');
  const stated = text === undefined || text.trim() === '' ? Number.NaN : Number(text);
  if (!(stated >= 0) || !Number.isFinite(stated)) {
    return 1;
  }
  if (stated === 0) {
    return undefined;
  }
  const total = path
    .flatMap((sub) => Array.from(sub.segments))
    .reduce((sum, segment) => sum + measureSegment(segment).total, 0);
  return total / stated;
}
