import { booleans, resolveRegions } from '@pourproof/arrangement';
import { type Bounds, type CleanRegion, packRings, ringsBounds } from '@pourproof/plane';
import { nearRings } from './near-rings.ts';

/** Margin of a part beyond its box, mm: its clipped edge never falls on a joint. */
const PART_MARGIN_MM = 1;
/** Regions with fewer points are not divided: it would save nothing (our choice). */
const MIN_DIVIDED_POINTS = 128;

/**
 * For every box, a region that equals the given one inside the box; outside it parts may be missing.
 *
 * Region and boxes are halved recursively, so that a long outline over many blocks is clipped about
 * log₂(boxes) times instead of once for every box.
 */
export function nearParts(region: CleanRegion, boxes: readonly Bounds[]): readonly CleanRegion[] {
  const parts: CleanRegion[] = boxes.map(() => region);
  const share = (part: CleanRegion, items: readonly number[]): void => {
    if (items.length < 2 || part.coords.length < 2 * MIN_DIVIDED_POINTS) {
      for (const item of items) {
        parts[item] = nearRings(part, boxes[item] as Bounds);
      }
      return;
    }
    for (const half of halves(items, boxes)) {
      share(cutTo(part, around(half, boxes)), half);
    }
  };
  share(
    region,
    boxes.map((_, item) => item),
  );
  return parts;
}

/** Divides boxes in two halves by their middles, across the longer extent. */
function halves(items: readonly number[], boxes: readonly Bounds[]): readonly (readonly number[])[] {
  const [left, top, right, bottom] = around(items, boxes);
  const axis = right - left > bottom - top ? 0 : 1;
  const middle = (item: number): number => {
    const box = boxes[item] as Bounds;
    return box[axis] + box[(axis + 2) as 2 | 3];
  };
  const sorted = items.toSorted((a, b) => middle(a) - middle(b));
  const count = sorted.length >> 1;
  return [sorted.slice(0, count), sorted.slice(count)];
}

function around(items: readonly number[], boxes: readonly Bounds[]): Bounds {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const item of items) {
    const [left, top, right, bottom] = boxes[item] as Bounds;
    box[0] = Math.min(box[0], left - PART_MARGIN_MM);
    box[1] = Math.min(box[1], top - PART_MARGIN_MM);
    box[2] = Math.max(box[2], right + PART_MARGIN_MM);
    box[3] = Math.max(box[3], bottom + PART_MARGIN_MM);
  }
  return box;
}

function cutTo(region: CleanRegion, box: Bounds): CleanRegion {
  const near = nearRings(region, box);
  if (near.ringEnds.length === 0) {
    return near;
  }
  const [left, top, right, bottom] = box;
  const [x0, y0, x1, y1] = ringsBounds(near);
  if (x0 >= left && y0 >= top && x1 <= right && y1 <= bottom) {
    return near;
  }
  const frame = packRings([[left, top, right, top, right, bottom, left, bottom]]);
  return booleans(near, resolveRegions([{ ...frame, fillRule: 'nonzero' }]).region, 'intersect');
}
