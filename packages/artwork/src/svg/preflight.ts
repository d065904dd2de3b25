import {
  type Bounds,
  EMPTY_BOUNDS,
  isEmptyBounds,
  joinBounds,
  ringArea,
  ringStart,
  ringsBounds,
  SPECK_AREA_MM2,
} from '@pourproof/plane';
import type { NoticeBook } from './notice-book.ts';
import { noticeCovers } from './notice-covers.ts';
import type { Painted, Scene } from './scene.ts';

/** Artwork larger or smaller than this, in mm, is most likely in a wrong unit (common practice; no source). */
const HUGE_MM = 3000;
const TINY_MM = 5;

/** Outlines with more than this many segments, most of them shorter than this, in mm, are finer than a machine follows (common practice). */
const FINE_COUNT = 5000;
const FINE_MM = 0.02;

/** Looks over what was painted and writes down what a maker should know before carving. */
export function preflight(
  scene: Scene,
  painted: readonly Painted[],
  page: { readonly widthMm: number; readonly heightMm: number } | undefined,
): void {
  const { notices } = scene;
  const boxes = painted.map((p) => ringsBounds(p.region));
  noticeWholeSize(notices, boxes.reduce(joinBounds, EMPTY_BOUNDS));
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

function noticeWholeSize(notices: NoticeBook, box: Bounds): void {
  if (isEmptyBounds(box)) {
    return;
  }
  const width = box[2] - box[0];
  const height = box[3] - box[1];
  const words = `${Number(width.toPrecision(4))} × ${Number(height.toPrecision(4))}`;
  if (Math.max(width, height) > HUGE_MM) {
    notices.add('artwork-huge', {}, words);
  } else if (Math.max(width, height) < TINY_MM) {
    notices.add('artwork-tiny', {}, words);
  }
}

function noticeSpecks(notices: NoticeBook, painted: readonly Painted[]): void {
  for (const { region, place } of painted) {
    let area = 0;
    for (let k = 0; k < region.ringEnds.length; k++) {
      area += Math.abs(ringArea(region.coords, ringStart(region, k), region.ringEnds[k] as number));
    }
    if (area < SPECK_AREA_MM2) {
      notices.add(
        'speck',
        { ...place, atMm: [region.coords[0] as number, region.coords[1] as number] },
        `${SPECK_AREA_MM2}`,
      );
    }
  }
}

/** Outlines so finely divided that a machine's controller may starve. */
function noticeDetail(notices: NoticeBook, painted: readonly Painted[]): void {
  let all = 0;
  let fine = 0;
  for (const { coords, ringEnds } of painted.map((p) => p.region)) {
    let i = 2;
    for (const end of ringEnds) {
      for (; i < 2 * end; i += 2) {
        const dx = (coords[i] as number) - (coords[i - 2] as number);
        const dy = (coords[i + 1] as number) - (coords[i - 1] as number);
        all++;
        fine += dx * dx + dy * dy < FINE_MM * FINE_MM ? 1 : 0;
      }
      i += 2;
    }
  }
  if (all > FINE_COUNT && fine > all / 2) {
    notices.add('fine-detail', {}, `${FINE_MM}`);
  }
}

/** Shapes with exactly the same outline as an earlier one. */
function noticeDoubles(notices: NoticeBook, painted: readonly Painted[]): void {
  const seen = new Map<string, Painted[]>();
  for (const shape of painted) {
    const { coords, ringEnds } = shape.region;
    const key = `${coords.length} ${ringEnds.length} ${coords[0]} ${coords[1]} ${coords[coords.length >> 1]}`;
    const alike = seen.get(key);
    if (alike === undefined) {
      seen.set(key, [shape]);
    } else if (alike.some((other) => sameCoords(other.region.coords, coords))) {
      notices.add(
        'doubled-shape',
        { ...shape.place, atMm: [coords[0] as number, coords[1] as number] },
        shape.source,
      );
    } else {
      alike.push(shape);
    }
  }
}

function sameCoords(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}

function noticePage(
  notices: NoticeBook,
  painted: readonly Painted[],
  boxes: readonly Bounds[],
  widthMm: number,
  heightMm: number,
): void {
  const slack = 1e-3 * Math.max(widthMm, heightMm);
  const [first] = painted;
  const box = boxes[0];
  const covers =
    box !== undefined &&
    box[0] <= slack &&
    box[1] <= slack &&
    box[2] >= widthMm - slack &&
    box[3] >= heightMm - slack;
  if (first !== undefined && covers && painted.length > 1 && first.region.coords.length === 8) {
    notices.add('page-background', first.place, `${first.source}, ${first.colour}`);
  }
  painted.forEach((shape, i) => {
    const b = boxes[i] as Bounds;
    const out = Math.max(-b[0], -b[1], b[2] - widthMm, b[3] - heightMm);
    if (out > slack) {
      notices.add('outside-page', { ...shape.place, atMm: [b[0], b[1]] }, '', out);
    }
  });
}
