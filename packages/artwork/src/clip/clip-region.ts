import { type BooleanOperation, combineShapes } from '@pourproof/arrangement';
import { type Bounds, boundsOf, packRings, type Region, ringsBounds } from '@pourproof/plane';
import { nearRings } from './near-rings.ts';

/** A region that covers nothing. */
export const EMPTY_REGION: Region = { ...packRings([]), fillRule: 'nonzero' };

/**
 * The part of a region inside a clip, in mm; the region itself where its box shows that all of it is inside.
 */
export function intersectRegions(subject: Region, clip: Region): Region {
  const a = ringsBounds(subject);
  const b = ringsBounds(clip);
  if (a[0] > b[2] || b[0] > a[2] || a[1] > b[3] || b[1] > a[3]) {
    return EMPTY_REGION;
  }
  if (isUprightRectangle(clip) && a[0] >= b[0] && a[1] >= b[1] && a[2] <= b[2] && a[3] <= b[3]) {
    return subject;
  }
  const both: Bounds = [
    Math.max(a[0], b[0]),
    Math.max(a[1], b[1]),
    Math.min(a[2], b[2]),
    Math.min(a[3], b[3]),
  ];
  return combine([nearRings(subject, both)], [nearRings(clip, both)], 'intersect');
}

/**
 * The part of a region outside all the others, in mm; the region itself where no other's box meets its own.
 */
export function subtractRegions(subject: Region, others: readonly Region[]): Region {
  const a = ringsBounds(subject);
  const near = others.filter((other) => {
    const b = ringsBounds(other);
    return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
  });
  return near.length === 0
    ? subject
    : combine(
        [subject],
        near.map((other) => nearRings(other, a)),
        'subtract',
      );
}

/** What all the regions together cover, each by its own fill rule, as one region. */
export function uniteRegions(regions: readonly Region[]): Region {
  return regions.length === 0 ? EMPTY_REGION : combine(regions, [], 'union');
}

function combine(a: readonly Region[], b: readonly Region[], operation: BooleanOperation): Region {
  return { ...combineShapes(a, b, operation), fillRule: 'nonzero' };
}

function isUprightRectangle({ coords, ringEnds }: Region): boolean {
  if (ringEnds.length !== 1 || coords.length !== 8) {
    return false;
  }
  const box = boundsOf(coords);
  return coords.every((value, i) => value === box[i % 2] || value === box[2 + (i % 2)]) && !isBowTie(coords);
}

function isBowTie(c: Float64Array): boolean {
  return !(c[0] !== c[4] && c[1] !== c[5] && c[2] !== c[6] && c[3] !== c[7]);
}
