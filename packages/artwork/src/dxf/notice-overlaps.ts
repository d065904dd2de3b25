import { type Bounds, BoxIndex, boundsOf, EMPTY_BOUNDS, isEmptyBounds, joinBounds } from '@pourproof/plane';
import { innerPoints, isInside } from '../chains/inner-points.ts';
import type { DxfNotices } from './dxf-notices.ts';
import type { Sheet } from './dxf-pen.ts';

/** Most sheets compared with one another: a drawing with more cannot be explained by pairs. */
const MAX_SHEETS = 300;
/** Numbers of outlines that are looked at in all: then the boxes of sheets decide. */
const MAX_WORK = 100_000_000;

type Ring = readonly number[];

/** A sheet with its outlines, their box, and the box of its own areas, either of which may be empty. */
interface Extent {
  readonly name: string;
  readonly rings: readonly Ring[];
  readonly index: BoxIndex;
  readonly outlines: Bounds;
  readonly areas: Bounds;
}

/**
 * Notices where what a maker may see as one figure is read as several: outlines of one layer that lie in what another's
 * enclose, which make no holes there, and areas within the extent of outlines, which are part of them already. An
 * outline that touches the one around it lies within it, however both are flattened.
 *
 * @param outlines closed outlines of each sheet
 */
export function noticeOverlaps(
  sheets: readonly Sheet[],
  outlines: readonly (readonly Ring[])[],
  log: DxfNotices,
): void {
  const extents = sheets.slice(0, MAX_SHEETS).map((sheet, i) => extentOf(sheet, outlines[i] ?? []));
  const work = { left: MAX_WORK };
  for (const outer of extents) {
    for (const inner of extents) {
      const within = inner === outer ? null : ringWithin(inner, outer, work);
      if (within !== null) {
        log.add('layers-overlap', placeOf(within), `${inner.name} within ${outer.name}`);
      }
      if (isWithin(inner.areas, outer.outlines)) {
        log.add('areas-in-outlines', placeOf(inner.areas), `${inner.name} within ${outer.name}`);
      }
    }
  }
}

function extentOf(sheet: Sheet, rings: readonly Ring[]): Extent {
  const areas = [...sheet.patches, ...sheet.areas.flatMap((area) => area.rings)];
  const boxes = rings.map((ring) => boundsOf(ring));
  return {
    name: `${sheet.layer === '' ? 'no layer' : `layer ${sheet.layer}`} (${sheet.colour})`,
    rings,
    index: new BoxIndex(Float64Array.from(boxes.flat())),
    outlines: boxes.reduce<Bounds>((all, box) => joinBounds(all, box), EMPTY_BOUNDS),
    areas: boxOf(areas),
  };
}

/** The box of the first outline of one sheet that lies in what another's enclose by even-odd; `null` for none. */
function ringWithin(inner: Extent, outer: Extent, work: { left: number }): Bounds | null {
  if (!overlaps(inner.outlines, outer.outlines)) {
    return null;
  }
  for (const ring of inner.rings) {
    const box = boundsOf(ring);
    if (!overlaps(box, outer.outlines)) {
      continue;
    }
    if (work.left <= 0) {
      return isWithin(inner.outlines, outer.outlines) ? inner.outlines : null;
    }
    work.left -= ring.length;
    const points = innerPoints(ring);
    if (points.length > 0 && points.every(([x, y]) => isEnclosed(outer, x, y, work))) {
      return box;
    }
  }
  return null;
}

function isEnclosed({ rings, index }: Extent, x: number, y: number, work: { left: number }): boolean {
  let inside = false;
  index.someIn(x, y, x, y, (k) => {
    const ring = rings[k] as Ring;
    work.left -= ring.length;
    inside = inside !== isInside(ring, x, y);
    return false;
  });
  return inside;
}

function boxOf(rings: readonly Ring[]): Bounds {
  return rings.reduce<Bounds>((box, ring) => joinBounds(box, boundsOf(ring)), EMPTY_BOUNDS);
}

function overlaps(a: Bounds, b: Bounds): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

function isWithin(inner: Bounds, outer: Bounds): boolean {
  return (
    !isEmptyBounds(inner) &&
    inner[0] >= outer[0] &&
    inner[1] >= outer[1] &&
    inner[2] <= outer[2] &&
    inner[3] <= outer[3]
  );
}

function placeOf(box: Bounds): { atMm: readonly [number, number] } {
  return { atMm: [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2] };
}
