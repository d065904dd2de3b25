import { type Bounds, type Drawing, scaling } from '@pourproof/plane';
import { boxAround, boxesOf } from '../clip/boxes.ts';
import { NoticeBook } from '../notice-book.ts';
import { CoordArena } from '../path/coord-arena.ts';
import { RingWriter } from '../path/ring-writer.ts';
import { ComputedStyle } from './computed-style.ts';
import { decodeSvg } from './decode-svg.ts';
import { drawContent, drawElement } from './draw-element.ts';
import { drawRoot } from './draw-root.ts';
import { expandEntities } from './expand-entities.ts';
import { LengthNotices } from './notice-lengths.ts';
import { type PageSize, pageSize } from './page-size.ts';
import { parseSvgTree } from './parse-svg-tree.ts';
import { preflight, regionsOf } from './preflight.ts';
import { readStyleSheets } from './read-style-sheets.ts';
import { declaredOf, type Painted, type Scene, type SvgNotices, styleUnder } from './scene.ts';
import { noticeSize } from './size-notices.ts';
import { SourceWords } from './source-words.ts';
import type { SvgElement } from './svg-element.ts';
import { SVG_NOTICES, svgNotice } from './svg-notices.ts';
import { type SettledSvgOptions, type SvgOptions, settleSvgOptions } from './svg-options.ts';
import { visiblePaint } from './visible-paint.ts';

/**
 * Everything that an SVG file paints, as shapes in mm in painter's order (SVG 2, static parts), with a notice
 * for each thing that is not taken as it stands. Bytes may be gzip-compressed and in UTF-8 or UTF-16. Nothing
 * outside the file is ever read.
 *
 * `pageMm` is the page; artwork outside of it counts, with a notice. A file that paints nothing gives no
 * shapes and the notice `nothing-painted`.
 *
 * @throws {ArtworkError} when the file is not SVG at all, not well-formed, or made to exhaust a computer
 * @throws {RangeError} when an option is not a number above 0
 *
 * @example
 * ```ts
 * const drawing = readSvg(
 *   '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm"><path d="M0 0h20v20z"/></svg>',
 *   { widthMm: 50 },
 * );
 * drawing.shapes[0].region; // rings in mm, y down, with their fill rule
 * drawing.notices; // what was not read as it stands, with places
 * ```
 */
export function readSvg(source: string | Uint8Array, options: SvgOptions = {}): Drawing {
  const settled = settleSvgOptions(options);
  const notices = new NoticeBook(SVG_NOTICES);
  const tree = parseSource(source, notices);
  const scene = makeScene(tree, notices, settled);
  const rootStyle = styleUnder(scene, tree);
  const page = pageSize(tree, rootStyle, settled.pxPerInch);
  return readScaled({ ...scene, pageSource: page.source }, rootStyle, page);
}

function parseSource(source: string | Uint8Array, notices: SvgNotices): SvgElement {
  const decoded =
    typeof source === 'string' ? { text: source.replace(/^\uFEFF/, ''), encoding: '' } : decodeSvg(source);
  if ('wronglyDeclared' in decoded && decoded.wronglyDeclared !== undefined) {
    const { wronglyDeclared: declared, encoding: read } = decoded;
    notices.put(svgNotice('encoding-differs', { declared, read }, [{ line: 1 }]));
  }
  if ('isDamaged' in decoded) {
    notices.add('packed-damaged');
  }
  const expanded = expandEntities(decoded.text);
  const { root, undeclaredPrefix } = parseSvgTree(expanded);
  if (undeclaredPrefix !== undefined) {
    notices.add('namespace-undeclared', { line: 1 }, undeclaredPrefix);
  }
  for (const name of expanded.external) {
    notices.add('external-reference', {}, `entity ${name}`);
  }
  return root;
}

function makeScene(root: SvgElement, notices: SvgNotices, options: SettledSvgOptions): Scene {
  const ids = new Map<string, SvgElement>();
  const styles: SvgElement[] = [];
  const visit = (element: SvgElement): void => {
    const id = element.attributes.get('id');
    if (id !== undefined && !ids.has(id)) {
      ids.set(id, element);
    }
    if (element.name === 'style') {
      styles.push(element);
    }
    element.children.forEach(visit);
  };
  visit(root);
  const scene: Scene = {
    root,
    ids,
    rules: readStyleSheets(styles, notices),
    notices,
    lengths: new LengthNotices(notices),
    options,
    rootFontSize: 16,
    pageSource: '',
    mode: 'paint',
    painted: [],
    open: [],
    boxes: [],
    writer: new RingWriter(),
    arena: new CoordArena(),
    sources: new SourceWords(),
    declared: new Map(),
    reuse: { count: 0 },
    draw: drawElement,
    drawContent,
  };
  return { ...scene, rootFontSize: new ComputedStyle(declaredOf(scene, root)).fontSize };
}

/** Draws once at the file's own size, and where a width or height is asked for once more at that scale. */
function readScaled(scene: Scene, rootStyle: ComputedStyle, page: PageSize): Drawing {
  const { options } = scene;
  const wanted = options.widthMm !== undefined || options.heightMm !== undefined;
  const factor = wanted ? trialFactor(scene, rootStyle, page) : options.scale;
  const painted = paint(scene, rootStyle, page, factor);
  if (wanted && painted.length > 0) {
    // flattening moves an edge by up to the tolerance; the last digits are put right by a scale so close to 1
    // that nothing else changes
    scaleInPlace(painted, wantedFactor(options, boxOf(painted)));
  }
  const pageMm = {
    widthMm: page.width * page.mmPerPx * factor,
    heightMm: page.height * page.mmPerPx * factor,
  };
  const box = boxOf(painted);
  const scaleSource = noticeSize(scene, page, factor, box);
  preflight(scene, painted, page.hasPage ? pageMm : undefined);
  const kept = options.carve === 'visible' ? visiblePaint(scene.notices, painted) : painted;
  if (kept.length === 0) {
    scene.notices.add('nothing-painted');
  }
  return {
    format: 'svg',
    scaleSource,
    shapes: kept.map((p) => p.shape),
    notices: scene.notices.notices(),
    toleranceMm: options.toleranceMm,
    ...(scene.open.length > 0 ? { open: { outlines: scene.open, join: null } } : {}),
    ...(page.hasPage ? { pageMm } : {}),
  };
}

function paint(scene: Scene, style: ComputedStyle, page: PageSize, factor: number): Painted[] {
  const hostToMm = scaling(page.mmPerPx * factor);
  drawRoot(scene, page, {
    style,
    toMm: hostToMm,
    hostToMm,
    viewport: { width: page.width, height: page.height },
    layer: '',
    opacity: style.alpha('opacity'),
    within: [],
  });
  return scene.painted;
}

function wantedFactor({ widthMm, heightMm }: SettledSvgOptions, box: Bounds): number {
  const byWidth = widthMm === undefined ? Infinity : widthMm / (box[2] - box[0]);
  const byHeight = heightMm === undefined ? Infinity : heightMm / (box[3] - box[1]);
  const factor = Math.min(byWidth, byHeight);
  return factor > 0 && Number.isFinite(factor) ? factor : 1;
}

/** The factor that a drawing at its own size asks for; that drawing is let go before the true one is made. */
function trialFactor(scene: Scene, style: ComputedStyle, page: PageSize): number {
  const trial = {
    ...scene,
    notices: new NoticeBook(SVG_NOTICES),
    // the size that is asked for is to be seen yet
    options: { ...scene.options, refuseBounds: undefined },
    painted: [],
    open: [],
    reuse: { count: 0 },
  };
  return wantedFactor(scene.options, boxOf(paint({ ...trial, arena: new CoordArena() }, style, page, 1)));
}

function scaleInPlace(painted: readonly Painted[], factor: number): void {
  for (const { shape } of painted) {
    // the reader's own arrays, given to nobody yet
    const { coords } = shape.region;
    for (let i = 0; i < coords.length; i++) {
      coords[i] = (coords[i] as number) * factor;
    }
  }
}

function boxOf(painted: readonly Painted[]): Bounds {
  return boxAround(boxesOf(regionsOf(painted), painted.length));
}
