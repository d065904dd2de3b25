import { type Bounds, BoxIndex, type Point, packRings, type Rings, ringsBounds } from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';

/** Where a changed drawing has what another one has somewhere, and how exactly that is known. */
export interface Moved {
  /** The same place in the changed drawing. */
  readonly to: (place: FindingPlace) => FindingPlace;
  /** Places nearer to each other than this are one place, mm. */
  readonly slackMm: number;
}

/**
 * Places of a finding that none of others has, by its lines: what touches one of theirs, or lies within an area of theirs, is no
 * other place, however much larger or smaller it is. A finding without a place is one of the whole job.
 */
export function newPlaces(
  { where }: Finding,
  known: readonly Finding[],
  moved: Moved,
): readonly FindingPlace[] {
  if (where.length === 0) {
    return [];
  }
  const places = known.flatMap((finding) => finding.where.map(moved.to));
  const segments = places.flatMap(segmentsOf);
  const boxes = new Float64Array(4 * segments.length);
  segments.forEach((segment, k) => {
    boxes.set(boxOf(segment), 4 * k);
  });
  const index = new BoxIndex(boxes);
  const touches = (segment: Segment): boolean => {
    const [left, top, right, bottom] = boxOf(segment);
    const by = moved.slackMm;
    return index.someIn(
      left - by,
      top - by,
      right + by,
      bottom + by,
      (k) => distance(segment, segments[k] as Segment) <= by,
    );
  };
  const within = withinAny(places);
  return where.filter((place) => !segmentsOf(place).some(touches) && !within(place));
}

/** Whether a place lies within one of some areas, or one of them within it. */
function withinAny(places: readonly FindingPlace[]): (place: FindingPlace) => boolean {
  const areas = places.flatMap((place) => areaOf(place) ?? []);
  const around = new BoxIndex(Float64Array.from(areas.flatMap((area) => ringsBounds(area))));
  const middles = new BoxIndex(Float64Array.from(places.flatMap(({ atMm: [x, y] }) => [x, y, x, y])));
  return (place) => {
    const [x, y] = place.atMm;
    const own = areaOf(place);
    const holdsOne = (k: number): boolean => {
      const [u, v] = (places[k] as FindingPlace).atMm;
      return own !== null && isInside(own, u, v);
    };
    return (
      around.someIn(x, y, x, y, (k) => isInside(areas[k] as Rings, x, y)) ||
      (own !== null && middles.someIn(...ringsBounds(own), holdsOne))
    );
  };
}

/** The outline of a place that is an area. */
function areaOf({ outline, areaMm2 }: FindingPlace): Rings | null {
  return areaMm2 === undefined || outline.length === 0 ? null : packRings(outline.map((ring) => ring.flat()));
}

/** Both ends of a line: `[x0, y0, x1, y1]`. */
type Segment = readonly [number, number, number, number];

/** The lines of a place, those of an area closed; its point where it has none. */
function segmentsOf({ atMm, outline, areaMm2 }: FindingPlace): readonly Segment[] {
  const segments: Segment[] = [];
  for (const line of outline) {
    const last = areaMm2 === undefined ? line.length - 1 : line.length;
    for (let k = 0; k < last; k++) {
      const [x0, y0] = line[k] as Point;
      const [x1, y1] = line[(k + 1) % line.length] as Point;
      segments.push([x0, y0, x1, y1]);
    }
  }
  const [x, y] = atMm;
  return segments.length > 0 ? segments : [[x, y, x, y]];
}

function boxOf([x0, y0, x1, y1]: Segment): Bounds {
  return [Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)];
}

function distance(one: Segment, other: Segment): number {
  if (cross(one, other)) {
    return 0;
  }
  const [ax, ay, bx, by] = one;
  const [cx, cy, dx, dy] = other;
  return Math.min(
    toSegment(ax, ay, other),
    toSegment(bx, by, other),
    toSegment(cx, cy, one),
    toSegment(dx, dy, one),
  );
}

function cross(one: Segment, other: Segment): boolean {
  const [ax, ay, bx, by] = one;
  const [cx, cy, dx, dy] = other;
  return side(one, cx, cy) * side(one, dx, dy) < 0 && side(other, ax, ay) * side(other, bx, by) < 0;
}

function side([ax, ay, bx, by]: Segment, x: number, y: number): number {
  return (bx - ax) * (y - ay) - (by - ay) * (x - ax);
}

function toSegment(x: number, y: number, [ax, ay, bx, by]: Segment): number {
  const [dx, dy] = [bx - ax, by - ay];
  const along = dx * dx + dy * dy;
  const t = along === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / along));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
