import type { Bounds, Point, Rings } from '@pourproof/plane';
import type { MarkedPlace } from '../findings/finding-entries.ts';

/** A numbered mark: where it points, and where its disc stands. */
export interface Mark {
  readonly label: string;
  readonly atMm: Point;
  readonly discMm: Point;
}

/** What discs should keep off. */
export interface MarkGround {
  /** The picture, mm. */
  readonly bounds: Bounds;
  /** Drawn shapes that are better not hidden. */
  readonly drawn: Rings;
}

/** Directions tried for a disc, as unit vectors. */
const DIRECTIONS: readonly Point[] = Array.from({ length: 12 }, (_, k) => {
  const turn = (2 * Math.PI * (k + 10.5)) / 12;
  return [Math.cos(turn), Math.sin(turn)];
});
/** Distances tried, in radii of the disc. */
const REACHES: readonly number[] = [2, 2.8, 3.8, 5, 6.5, 8.5];
/**
 * An edge is looked at in at most this many places, so that one huge edge costs no more than a crowd of small
 * ones.
 */
const MAX_STEPS = 500;

/**
 * Sets numbered discs beside their places so that they stay inside the picture, off one another and off what
 * is drawn, where there is room.
 *
 * @param radiusMm radius of a disc
 */
export function placeMarks(
  places: readonly Pick<MarkedPlace, 'label' | 'atMm'>[],
  radiusMm: number,
  { bounds, drawn }: MarkGround,
): readonly Mark[] {
  const discs: Point[] = [];
  const points = places.map((place) => place.atMm);
  const ink = inkedCells(drawn, radiusMm);
  return places.map(({ label, atMm }) => {
    const discMm = bestSpot(atMm, radiusMm, { bounds, discs, points, ink });
    discs.push(discMm);
    return { label, atMm, discMm };
  });
}

interface Taken {
  readonly bounds: Bounds;
  readonly discs: readonly Point[];
  readonly points: readonly Point[];
  readonly ink: ReadonlySet<string>;
}

/** Cells of one radius that an outline runs through. */
function inkedCells({ coords, ringEnds }: Rings, cellMm: number): ReadonlySet<string> {
  const cells = new Set<string>();
  let from = 0;
  for (const to of ringEnds) {
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      const ax = coords[2 * i] ?? 0;
      const ay = coords[2 * i + 1] ?? 0;
      const dx = (coords[2 * j] ?? 0) - ax;
      const dy = (coords[2 * j + 1] ?? 0) - ay;
      const steps = Math.max(1, Math.min(MAX_STEPS, Math.ceil(Math.hypot(dx, dy) / cellMm)));
      for (let k = 0; k < steps; k++) {
        cells.add(cellOf(ax + (k / steps) * dx, ay + (k / steps) * dy, cellMm));
      }
    }
    from = to;
  }
  return cells;
}

function cellOf(x: number, y: number, cellMm: number): string {
  return `${Math.floor(x / cellMm)},${Math.floor(y / cellMm)}`;
}

function bestSpot(atMm: Point, radiusMm: number, taken: Taken): Point {
  let best: Point = atMm;
  let least = Number.POSITIVE_INFINITY;
  for (const reach of REACHES) {
    for (const [dx, dy] of DIRECTIONS) {
      const spot: Point = [atMm[0] + dx * reach * radiusMm, atMm[1] + dy * reach * radiusMm];
      const cost = crowding(spot, radiusMm, taken) + reach / 8;
      if (cost < least) {
        least = cost;
        best = spot;
      }
    }
  }
  return best;
}

/** How badly a disc here would hide other discs, other places or what is drawn, or leave the picture. */
function crowding([x, y]: Point, radiusMm: number, { bounds, discs, points, ink }: Taken): number {
  const overlap = (distance: number, clear: number): number => Math.max(0, clear - distance / radiusMm);
  const [left, top, right, bottom] = bounds;
  let sum = 10 * overlap(Math.min(x - left, y - top, right - x, bottom - y), 1.15);
  for (const [px, py] of discs) {
    sum += 5 * overlap(Math.hypot(px - x, py - y), 2.3);
  }
  for (const [px, py] of points) {
    sum += overlap(Math.hypot(px - x, py - y), 1.3);
  }
  for (const [dx, dy] of DIRECTIONS) {
    sum += ink.has(cellOf(x + dx * radiusMm, y + dy * radiusMm, radiusMm)) ? 0.12 : 0;
  }
  return sum;
}
