import {
  applyTransform,
  type Bounds,
  compose,
  DEFAULT_JOIN_TOLERANCE_MM,
  type DrawnShape,
  determinant,
  type Point,
  type Region,
  type Transform,
} from '@pourproof/plane';
import { EMPTY_REGION, intersectRegions } from '../clip/clip-region.ts';
import { MAX_COORD_MM } from '../max-coord.ts';
import { fillRings } from '../path/fill-rings.ts';
import { inverseTransform } from '../path/inverse-transform.ts';
import { isLarge } from '../path/is-large.ts';
import { largestScale } from '../path/largest-scale.ts';
import type { Path, Subpath } from '../path/path.ts';
import { pathBounds } from '../path/path-bounds.ts';
import { subpathArea } from '../path/subpath-area.ts';
import { transformPath } from '../path/transform-path.ts';
import { cutDashes, MIN_DASH_PERIOD_MM } from '../stroke/cut-dashes.ts';
import { strokeSubpath } from '../stroke/stroke-outline.ts';
import { SHAPE_ELEMENTS } from './basic-shape.ts';
import type { Colour } from './css-colour.ts';
import { guardSize } from './guard-size.ts';
import { isWithinReach } from './is-drawable.ts';
import { paintOf } from './paint-of.ts';
import type { DrawState, Scene } from './scene.ts';
import { strokeDashes, strokeStyle } from './stroke-style.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';
import { HAIRLINE_MM } from './svg-limits.ts';

/** Ends of an outline nearer than this, in mm, meet: 1 nm, what rounding of decimals leaves. */
const MIN_GAP_MM = 1e-6;

/**
 * Area as a fraction of the gap's square below which an open subpath encloses nothing: a straight line, but
 * for rounding.
 */
const MIN_ENCLOSED_REL = 1e-9;

/** The paints of a shape, for its markers. */
export interface ShapePaints {
  readonly fill: Colour | undefined;
  readonly stroke: Colour | undefined;
}

/**
 * Paints a shape's fill and stroke into the scene; in the other modes only its geometry.
 *
 * @param nodes points of the source that join lines and curves; `undefined` for a path that was made of chords
 */
export function drawShape(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  path: Path,
  nodes: number | undefined,
): ShapePaints {
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
    if (!isWithinReach(scene, element, state.toMm, path)) {
      return nothing;
    }
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
  if (fillPaint !== undefined || strokePaint !== undefined) {
    if (!isWithinReach(scene, element, state.toMm, path)) {
      return nothing;
    }
    guardSize(scene, state, path);
  }
  const paintFill = (): void => {
    if (fillPaint !== undefined) {
      noticeOpenOutlines(scene, element, state, path);
      emit(scene, element, state, fill(), { ...fillPaint, nodes });
    }
  };
  const paintStroke = (): void => {
    if (strokePaint !== undefined) {
      emit(scene, element, state, strokedRegion(scene, element, state, path), {
        ...strokePaint,
        isPieced: true,
        nodes,
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

/** How many points join the lines and curves of a path; a line that closes it in its own start adds none. */
export function nodesOf(path: Path): number {
  let nodes = 0;
  for (const { x0, y0, segments } of path) {
    let [x, y] = [x0, y0];
    segments.forEach((segment) => {
      nodes += segment.x === x && segment.y === y ? 0 : 1;
      [x, y] = [segment.x, segment.y];
    });
    nodes += x === x0 && y === y0 ? 0 : 1;
  }
  return nodes;
}

/** Adds an area to the scene, cut by the clips around it. */
export function emit(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  region: Region,
  {
    isPieced,
    nodes,
    ...paint
  }: Colour & Pick<DrawnShape, 'isPieced'> & { readonly nodes?: number | undefined },
): void {
  if (region.ringEnds.length === 0) {
    return;
  }
  if (!region.coords.every((value) => Math.abs(value) <= MAX_COORD_MM)) {
    scene.notices.add('number-too-large', placeOf(element), elementName(element));
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
  const shape = { region: seen, layer: state.layer, colour: paint.hex, source: scene.sources.of(element) };
  scene.painted.push({
    shape: {
      ...shape,
      ...(isPieced === true ? { isPieced } : {}),
      ...(nodes === undefined ? {} : { nodes }),
    },
    opaque,
    element,
  });
}

function filledRegion(scene: Scene, state: DrawState, path: Path, rule: 'fill-rule' | 'clip-rule'): Region {
  fillRings(scene.writer, path, state.toMm, scene.options.toleranceMm);
  const isEvenOdd = state.style.get(rule).toLowerCase() === 'evenodd';
  return scene.writer.takeRegion(scene.arena, isEvenOdd ? 'evenodd' : 'nonzero');
}

/**
 * The stroke's outline, made in the space where the pen is round and then mapped, so that unequal scales
 * flatten it truly.
 */
function strokedRegion(scene: Scene, element: SvgElement, state: DrawState, path: Path): Region {
  const fixed = state.style.get('vector-effect').includes('non-scaling-stroke');
  const penToMm = fixed ? state.hostToMm : state.toMm;
  const onPen = fixed ? transformPath(compose(inverseTransform(penToMm), state.toMm), path) : path;
  const style = strokeStyle(scene, element, state);
  const widthMm = style.width * Math.sqrt(Math.abs(determinant(penToMm)));
  if (!(style.width * largestScale(penToMm) <= MAX_COORD_MM)) {
    scene.notices.add('number-too-large', placeOf(element), elementName(element));
    return EMPTY_REGION;
  }
  if (widthMm > 0 && widthMm < HAIRLINE_MM) {
    scene.notices.add('hairline-stroke', placeOf(element), '', widthMm);
  }
  const dashed = dashedPath(scene, element, state, { onPen, penToMm });
  const { writer } = scene;
  const [a, b, c, d, e, f] = penToMm;
  const tolerance = scene.options.toleranceMm / largestScale(penToMm);
  const write = (ring: readonly number[]): void => {
    for (let i = 0; i < ring.length; i += 2) {
      const x = ring[i] as number;
      const y = ring[i + 1] as number;
      writer.push(a * x + c * y + e, b * x + d * y + f);
    }
    writer.closeRing();
  };
  const rings = (take: (ring: readonly number[]) => void): void => {
    for (const sub of dashed) {
      strokeSubpath(sub, style, tolerance, take);
    }
  };
  if (isLarge(dashed)) {
    let numbers = 0;
    rings((ring) => {
      numbers += ring.length;
    });
    writer.expect(numbers);
  }
  rings(write);
  return writer.takeRegion(scene.arena, 'nonzero');
}

function dashedPath(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  { onPen, penToMm }: { readonly onPen: Path; readonly penToMm: Transform },
): Path {
  const dashes = strokeDashes(scene, element, state, onPen);
  if (dashes === undefined) {
    return onPen;
  }
  const cut = cutDashes(onPen, dashes.pattern, dashes.offset, MIN_DASH_PERIOD_MM / largestScale(penToMm));
  if (cut === undefined) {
    scene.notices.add('dashes-too-fine', placeOf(element));
  }
  return cut ?? onPen;
}

/** Notices where a filled outline is open and by how much; lines that enclose nothing are not outlines. */
function noticeOpenOutlines(scene: Scene, element: SvgElement, state: DrawState, path: Path): void {
  for (const sub of path) {
    if (sub.closed) {
      continue;
    }
    const [first, last] = endsOf(sub, state.toMm);
    const gapMm = Math.hypot(last[0] - first[0], last[1] - first[1]);
    const areaMm2 = gapMm > MIN_GAP_MM ? subpathArea(sub) * determinant(state.toMm) : 0;
    // what is too large to compute is left out and told as that
    const isOutline = Number.isFinite(areaMm2) && Math.abs(areaMm2) > MIN_ENCLOSED_REL * gapMm * gapMm;
    if (!isOutline || Math.max(...first.map(Math.abs), ...last.map(Math.abs)) > MAX_COORD_MM) {
      continue;
    }
    const place = { ...placeOf(element), atMm: last, gapMm };
    if (gapMm <= DEFAULT_JOIN_TOLERANCE_MM) {
      scene.notices.add('gap-closed', place, '', gapMm);
      continue;
    }
    scene.notices.add('open-outline', place, '', gapMm);
    scene.open.push({
      gaps: [{ fromMm: last, toMm: first, widthMm: gapMm }],
      areaMm2: Math.abs(areaMm2),
      reading: 'filled',
      isHole: false,
    });
  }
}

/** A subpath's first and last point through a map. */
function endsOf(sub: Subpath, toMm: Transform): [Point, Point] {
  let [x, y] = [sub.x0, sub.y0];
  sub.segments.forEach((s) => {
    x = s.x;
    y = s.y;
  });
  return [applyTransform(toMm, [sub.x0, sub.y0]), applyTransform(toMm, [x, y])];
}

/**
 * Notices where the drawing itself has lines shorter than the tolerance; lines of no length are caps and
 * closings.
 */
function noticeShortSegments(scene: Scene, element: SvgElement, state: DrawState, path: Path): void {
  const { toleranceMm } = scene.options;
  const least = toleranceMm / largestScale(state.toMm);
  let isShort = false;
  for (const sub of SHAPE_ELEMENTS.has(element.name) ? path : []) {
    sub.segments.forEach((s) => {
      const length = s.kind === 'line' ? Math.hypot(s.x - s.x0, s.y - s.y0) : 0;
      isShort ||= length > 0 && length < least;
    });
  }
  if (isShort) {
    scene.notices.add('short-segments', placeOf(element), '', toleranceMm);
  }
}
