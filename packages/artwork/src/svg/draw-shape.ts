import {
  type Bounds,
  compose,
  determinant,
  packRings,
  type Region,
  ringArea,
  type Transform,
  transformRings,
} from '@pourproof/plane';
import { intersectRegions } from '../clip/clip-region.ts';
import { fillRings } from '../path/fill-rings.ts';
import type { Path, Segment } from '../path/path.ts';
import { pathBounds } from '../path/path-bounds.ts';
import { transformPath } from '../path/transform-path.ts';
import { cutDashes } from '../stroke/cut-dashes.ts';
import { strokeOutline } from '../stroke/stroke-outline.ts';
import { SHAPE_ELEMENTS } from './basic-shape.ts';
import type { Colour } from './css-colour.ts';
import { paintOf } from './paint-of.ts';
import { type DrawState, type Painted, placeOf, type Scene } from './scene.ts';
import { strokeDashes, strokeStyle } from './stroke-style.ts';
import { elementName, type SvgElement } from './svg-element.ts';

/** Strokes thinner than this, in mm, are called hairlines (common practice; no source). */
const HAIRLINE_MM = 0.1;

/** Coordinates beyond this, in mm, are a slip: 1000 km; numbers that overflow are beyond it too. */
const FARTHEST_MM = 1e9;

/** The paints of a shape, for its markers. */
export interface ShapePaints {
  readonly fill: Colour | undefined;
  readonly stroke: Colour | undefined;
}

/** Paints a shape's fill and stroke into the scene; in the other modes only its geometry. */
export function drawShape(scene: Scene, element: SvgElement, state: DrawState, path: Path): ShapePaints {
  const nothing = { fill: undefined, stroke: undefined };
  if (scene.mode === 'box') {
    scene.boxes.push(pathBounds(transformPath(state.toMm, path)));
    return nothing;
  }
  if (state.style.get('visibility') !== 'visible') {
    if (scene.mode === 'paint') {
      scene.notices.add('hidden-elements', placeOf(element));
    }
    return nothing;
  }
  if (path.length === 0 || determinant(state.toMm) === 0) {
    return nothing;
  }
  const fill = (): Region =>
    filledRegion(scene, state, path, scene.mode === 'clip' ? 'clip-rule' : 'fill-rule');
  if (scene.mode === 'clip') {
    emit(scene, element, state, fill(), { hex: '#000000', alpha: 1 });
    return nothing;
  }
  let known: Bounds | undefined;
  const box = (): Bounds => {
    known ??= pathBounds(path);
    return known;
  };
  const fillPaint = element.name === 'line' ? undefined : paintOf(scene, state, 'fill', element, box);
  const strokePaint = paintOf(scene, state, 'stroke', element, box);
  const paintFill = (): void => {
    if (fillPaint !== undefined) {
      noticeOpenOutlines(scene, element, state, path);
      emit(scene, element, state, fill(), fillPaint);
    }
  };
  const paintStroke = (): void => {
    if (strokePaint !== undefined) {
      emit(scene, element, state, strokedRegion(scene, element, state, path), {
        ...strokePaint,
        isPieced: true,
      });
    }
  };
  const order = /^(?:markers\s+)?stroke/.test(state.style.get('paint-order'))
    ? [paintStroke, paintFill]
    : [paintFill, paintStroke];
  for (const paint of order) {
    paint();
  }
  noticeShortSegments(scene, element, state, path);
  return { fill: fillPaint, stroke: strokePaint };
}

/** Adds an area to the scene, cut by the clips around it. */
export function emit(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  region: Region,
  paint: Colour & Pick<Painted, 'isPieced'>,
): void {
  if (region.ringEnds.length === 0) {
    return;
  }
  if (!region.coords.every((value) => Math.abs(value) <= FARTHEST_MM)) {
    scene.notices.add('number-too-large', placeOf(element));
    return;
  }
  const seen = state.clip === undefined ? region : intersectRegions(region, state.clip);
  if (seen.ringEnds.length === 0) {
    return;
  }
  const opaque = paint.alpha * state.opacity >= 1;
  if (!opaque && scene.mode === 'paint') {
    scene.notices.add('translucent-paint', placeOf(element));
  }
  scene.painted.push({
    region: seen,
    layer: state.layer,
    colour: paint.hex,
    source: `${elementName(element)}, line ${element.line}`,
    ...(paint.isPieced === true ? { isPieced: true } : {}),
    opaque,
    place: placeOf(element),
  });
}

function filledRegion(scene: Scene, state: DrawState, path: Path, rule: 'fill-rule' | 'clip-rule'): Region {
  // one subpath at a time, so that a large file is never held twice
  const rings = path.flatMap((sub) => fillRings(transformPath(state.toMm, [sub]), scene.options.toleranceMm));
  return {
    ...packRings(rings),
    fillRule: state.style.get(rule).toLowerCase() === 'evenodd' ? 'evenodd' : 'nonzero',
  };
}

/** The stroke's outline, made in the space where the pen is round and then mapped, so that unequal scales flatten it truly. */
function strokedRegion(scene: Scene, element: SvgElement, state: DrawState, path: Path): Region {
  const fixed = state.style.get('vector-effect').includes('non-scaling-stroke');
  const penToMm = fixed ? state.hostToMm : state.toMm;
  const onPen = fixed ? transformPath(compose(inverse(penToMm), state.toMm), path) : path;
  const style = strokeStyle(scene, element, state);
  const widthMm = style.width * Math.sqrt(Math.abs(determinant(penToMm)));
  if (widthMm > 0 && widthMm < HAIRLINE_MM) {
    scene.notices.add('hairline-stroke', placeOf(element), '', widthMm);
  }
  const dashed = dashedPath(scene, element, state, onPen);
  const rings = strokeOutline(dashed, style, scene.options.toleranceMm / largestScale(penToMm));
  return transformRings(penToMm, { ...packRings(rings), fillRule: 'nonzero' });
}

function dashedPath(scene: Scene, element: SvgElement, state: DrawState, onPen: Path): Path {
  const dashes = strokeDashes(scene, element, state, onPen);
  if (dashes === undefined) {
    return onPen;
  }
  const cut = cutDashes(onPen, dashes.pattern, dashes.offset);
  if (cut === undefined) {
    scene.notices.add('dashes-too-fine', placeOf(element));
  }
  return cut ?? onPen;
}

/** Says where a filled outline is open and by how much; lines that enclose nothing are not outlines. */
function noticeOpenOutlines(scene: Scene, element: SvgElement, state: DrawState, path: Path): void {
  for (const sub of path) {
    if (sub.closed) {
      continue;
    }
    const [end] = transformPath(state.toMm, [{ ...sub, segments: sub.segments.slice(-1) }]);
    const last = end?.segments[0];
    if (end === undefined || last === undefined) {
      continue;
    }
    const gapMm = Math.hypot(last.x - end.x0, last.y - end.y0);
    const [ring] =
      gapMm > 1e-6 ? fillRings(transformPath(state.toMm, [sub]), 10 * scene.options.toleranceMm) : [];
    if (ring !== undefined && Math.abs(ringArea(ring)) > 1e-9 * gapMm * gapMm) {
      scene.notices.add('open-outline', { ...placeOf(element), atMm: [last.x, last.y], gapMm }, '', gapMm);
    }
  }
}

/** Says where the drawing itself has lines shorter than the tolerance; lines of no length are caps and closings. */
function noticeShortSegments(scene: Scene, element: SvgElement, state: DrawState, path: Path): void {
  const { toleranceMm } = scene.options;
  const least = toleranceMm / largestScale(state.toMm);
  const isShort = (s: Segment): boolean => {
    const length = s.kind === 'line' ? Math.hypot(s.x - s.x0, s.y - s.y0) : 0;
    return length > 0 && length < least;
  };
  if (SHAPE_ELEMENTS.has(element.name) && path.some((sub) => sub.segments.some(isShort))) {
    scene.notices.add('short-segments', placeOf(element), `${toleranceMm}`);
  }
}

/** The largest factor by which a map stretches a length. */
export function largestScale([a, b, c, d]: Transform): number {
  const sum = a * a + b * b + c * c + d * d;
  const det = a * d - b * c;
  return Math.sqrt((sum + Math.sqrt(Math.max(0, sum * sum - 4 * det * det))) / 2);
}

function inverse(t: Transform): Transform {
  const [a, b, c, d, e, f] = t;
  const det = determinant(t);
  return [d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det];
}
