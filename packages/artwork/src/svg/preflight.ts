import {
  type Bounds,
  isEmptyBounds,
  type Point,
  type Region,
  ringArea,
  ringStart,
  SPECK_AREA_MM2,
} from '@pourproof/plane';
import { type Boxes, boxAround, boxAt, boxesOf } from '../clip/boxes.ts';
import { noticeCovers } from './notice-covers.ts';
import type { Painted, Scene, SvgNotices } from './scene.ts';
import { placeOf } from './svg-element.ts';
import { FINE_SEGMENT_MM } from './svg-limits.ts';
import { svgNotice } from './svg-notices.ts';

/**
 * Artwork larger or smaller than this, in mm, is most likely in the wrong unit (common practice; no source).
 */
const HUGE_MM = 3000;
const TINY_MM = 5;

/**
 * Outlines of fewer segments than this are short enough for any controller, however fine (common practice; no
 * source).
 */
const FINE_COUNT = 5000;

/**
 * Artwork may stick out of the page, or a background fall short of it, by this fraction of its longer side
 * (our choice).
 */
const PAGE_SLACK_REL = 1e-3;

/** Checks what was painted and notices what a maker should know before carving. */
export function preflight(
  scene: Scene,
  painted: readonly Painted[],
  page: { readonly widthMm: number; readonly heightMm: number } | undefined,
): void {
  const { notices } = scene;
  const boxes = boxesOf(regionsOf(painted), painted.length);
  noticeWholeSize(notices, boxAround(boxes));
  noticeSpecks(notices, painted);
  noticeDetail(notices, painted);
  noticeDoubles(notices, painted);
  if (scene.options.carve === 'all') {
    noticeCovers(notices, painted, boxes);
  }
  if (page !== undefined) {
    noticePage(notices, painted, boxes, page.widthMm, page.heightMm);
  }
}

/** The regions of what was painted, one after the other. */
export function* regionsOf(painted: readonly Painted[]): Generator<Region> {
  for (const { shape } of painted) {
    yield shape.region;
  }
}

function noticeWholeSize(notices: SvgNotices, box: Bounds): void {
  if (isEmptyBounds(box)) {
    return;
  }
  const widthMm = box[2] - box[0];
  const heightMm = box[3] - box[1];
  if (Math.max(widthMm, heightMm) > HUGE_MM) {
    notices.put(svgNotice('artwork-huge', { widthMm, heightMm }));
  } else if (Math.max(widthMm, heightMm) < TINY_MM) {
    notices.put(svgNotice('artwork-tiny', { widthMm, heightMm }));
  }
}

function noticeSpecks(notices: SvgNotices, painted: readonly Painted[]): void {
  for (const { shape, element } of painted) {
    const { region } = shape;
    let area = 0;
    for (let k = 0; k < region.ringEnds.length; k++) {
      area += Math.abs(ringArea(region.coords, ringStart(region, k), region.ringEnds[k] as number));
    }
    if (area < SPECK_AREA_MM2) {
      const atMm: Point = [region.coords[0] as number, region.coords[1] as number];
      notices.add('speck', { ...placeOf(element), atMm });
    }
  }
}

/** Outlines so finely divided that a machine's controller may starve. */
function noticeDetail(notices: SvgNotices, painted: readonly Painted[]): void {
  let all = 0;
  let fine = 0;
  for (const { coords, ringEnds } of regionsOf(painted)) {
    let i = 2;
    for (const end of ringEnds) {
      for (; i < 2 * end; i += 2) {
        const dx = (coords[i] as number) - (coords[i - 2] as number);
        const dy = (coords[i + 1] as number) - (coords[i - 1] as number);
        all++;
        fine += dx * dx + dy * dy < FINE_SEGMENT_MM * FINE_SEGMENT_MM ? 1 : 0;
      }
      i += 2;
    }
  }
  if (all > FINE_COUNT && fine > all / 2) {
    notices.add('fine-detail');
  }
}

/** Shapes with exactly the same outline as an earlier one. */
function noticeDoubles(notices: SvgNotices, painted: readonly Painted[]): void {
  // a table of lists by the outline's hash: the first shape of each list, and of each shape the next
  const size = 2 ** Math.ceil(Math.log2(painted.length + 1));
  const first = new Int32Array(size).fill(-1);
  const next = new Int32Array(painted.length).fill(-1);
  painted.forEach(({ shape, element }, i) => {
    const { coords } = shape.region;
    const slot = hashOf(coords) & (size - 1);
    for (let k = first[slot] as number; k >= 0; k = next[k] as number) {
      if (sameCoords((painted[k] as Painted).shape.region.coords, coords)) {
        const atMm: Point = [coords[0] as number, coords[1] as number];
        notices.add('doubled-shape', { ...placeOf(element), atMm }, shape.source);
        return;
      }
    }
    next[i] = first[slot] as number;
    first[slot] = i;
  });
}

/** A whole number from the count of coordinates and some of them. */
function hashOf(coords: Float64Array): number {
  let hash = coords.length;
  for (const i of [0, 1, coords.length >> 1, coords.length - 1]) {
    const value = coords[i] ?? 0;
    // the digits down to 2⁻²⁰ mm and those above 2³² mm fold into one another
    hash = Math.imul(hash ^ (value * 2 ** 20), 0x9e3779b1) ^ Math.floor(value);
    hash ^= hash >>> 15;
  }
  return hash;
}

function sameCoords(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}

function noticePage(
  notices: SvgNotices,
  painted: readonly Painted[],
  boxes: Boxes,
  widthMm: number,
  heightMm: number,
): void {
  const slack = PAGE_SLACK_REL * Math.max(widthMm, heightMm);
  const [first] = painted;
  const box = first === undefined ? undefined : boxAt(boxes, 0);
  const covers =
    box !== undefined &&
    box[0] <= slack &&
    box[1] <= slack &&
    box[2] >= widthMm - slack &&
    box[3] >= heightMm - slack;
  if (first !== undefined && covers && painted.length > 1 && first.shape.region.coords.length === 8) {
    notices.add('page-background', placeOf(first.element), `${first.shape.source}, ${first.shape.colour}`);
  }
  painted.forEach(({ element }, i) => {
    const b = boxAt(boxes, i);
    const out = Math.max(-b[0], -b[1], b[2] - widthMm, b[3] - heightMm);
    if (out > slack) {
      notices.add('outside-page', { ...placeOf(element), atMm: [b[0], b[1]] }, '', out);
    }
  });
}
