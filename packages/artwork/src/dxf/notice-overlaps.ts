import { type Bounds, boundsOf, EMPTY_BOUNDS, isEmptyBounds, joinBounds } from '@pourproof/plane';
import type { DxfNotices } from './dxf-notices.ts';
import type { Sheet } from './dxf-pen.ts';

/** Most sheets compared with one another: a drawing with more cannot be explained by pairs. */
const MAX_SHEETS = 300;

/** A sheet with the box of its outlines and the box of its own areas, either of which may be empty. */
interface Extent {
  readonly name: string;
  readonly outlines: Bounds;
  readonly areas: Bounds;
}

/**
 * Notices where what a maker may see as one figure is read as several: outlines of one layer within the
 * extent of another's, which make no holes there, and areas within the extent of outlines, which are part of
 * them already.
 *
 * @param outlines closed outlines of each sheet
 */
export function noticeOverlaps(
  sheets: readonly Sheet[],
  outlines: readonly (readonly (readonly number[])[])[],
  log: DxfNotices,
): void {
  const extents = sheets.slice(0, MAX_SHEETS).map((sheet, i): Extent => {
    const areas = [...sheet.patches, ...sheet.areas.flatMap((area) => area.rings)];
    return {
      name: `${sheet.layer === '' ? 'no layer' : `layer ${sheet.layer}`} (${sheet.colour})`,
      outlines: boxOf(outlines[i] ?? []),
      areas: boxOf(areas),
    };
  });
  for (const outer of extents) {
    for (const inner of extents) {
      if (inner !== outer && isWithin(inner.outlines, outer.outlines)) {
        log.add('layers-overlap', placeOf(inner.outlines), `${inner.name} within ${outer.name}`);
      }
      if (isWithin(inner.areas, outer.outlines)) {
        log.add('areas-in-outlines', placeOf(inner.areas), `${inner.name} within ${outer.name}`);
      }
    }
  }
}

function boxOf(rings: readonly (readonly number[])[]): Bounds {
  return rings.reduce<Bounds>((box, ring) => joinBounds(box, boundsOf(ring)), EMPTY_BOUNDS);
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
