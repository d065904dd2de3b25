import { type Bounds, boundsOf, DEFAULT_JOIN_TOLERANCE_MM, type Point, ringArea } from '@pourproof/plane';
import { SNAP_MM } from './chain-graph.ts';

/** Most rings compared with a new one. */
const MAX_CANDIDATES = 64;
/** Most repetitions of a ring over itself that are detected. */
const MAX_TURNS = 8;
/** Most points of a ring that are checked against another. */
const CHECKED_POINTS = 100;

/**
 * Outlines closer than this all along, in mm, are more likely one outline drawn twice than a frame: no bit
 * fits between them (our choice).
 */
export const TWIN_MM = 0.3;

/** Outlines that run the same way within this are one, mm: a wider joining tolerance is for ends alone, or it would swallow thin rings. */
export function sameOutlineMm(joinToleranceMm: number): number {
  return Math.min(joinToleranceMm, DEFAULT_JOIN_TOLERANCE_MM);
}

/** Where large rings run within {@link TWIN_MM} of an earlier one all along. */
export function nearTwins(rings: readonly (readonly number[])[]): Point[] {
  const large = rings.filter((ring) => {
    const box = boundsOf(ring);
    return Math.min(box[2] - box[0], box[3] - box[1]) > 4 * TWIN_MM;
  });
  return distinctRings(large, TWIN_MM).doubled;
}

/**
 * The rings that follow no earlier ring within a tolerance, whatever their direction, start or division into
 * points, and where the others were; a ring that runs around more than once is cut to one turn. Without this,
 * an outline drawn twice would cancel itself under even-odd.
 *
 * Cost: O(total points) for ordinary drawings; a ring is compared only with those of the same box and area.
 */
export function distinctRings(
  rings: readonly (readonly number[])[],
  toleranceMm: number,
): { rings: (readonly number[])[]; doubled: Point[] } {
  const tolerance = Math.max(toleranceMm, SNAP_MM);
  const cells = new Map<string, number[]>();
  const boxes: Bounds[] = [];
  const kept: (readonly number[])[] = [];
  const doubled: Point[] = [];
  for (const drawn of rings) {
    const ring = onceAround(drawn);
    if (ring !== drawn) {
      doubled.push([ring[0], ring[1]]);
    }
    const box = boundsOf(ring);
    const twin = neighbourKeys(box, tolerance).some((key) =>
      (cells.get(key) ?? []).slice(0, MAX_CANDIDATES).some((k) => {
        const other = kept[k];
        return sameBox(box, boxes[k], tolerance) && areTwins(ring, other, tolerance);
      }),
    );
    if (twin) {
      doubled.push([ring[0], ring[1]]);
      continue;
    }
    const key = cellKey(box, tolerance);
    const cell = cells.get(key);
    if (cell) {
      cell.push(kept.length);
    } else {
      cells.set(key, [kept.length]);
    }
    kept.push(ring);
    boxes.push(box);
  }
  return { rings: kept, doubled };
}

/** The ring itself, or one turn of a ring whose points come again and again in the same order. */
function onceAround(ring: readonly number[]): readonly number[] {
  const n = ring.length / 2;
  const isSame = (i: number, j: number): boolean =>
    Math.hypot(ring[2 * i] - ring[2 * j], ring[2 * i + 1] - ring[2 * j + 1]) <= SNAP_MM;
  for (let turns = Math.min(MAX_TURNS, Math.floor(n / 3)); turns >= 2; turns--) {
    const period = n / turns;
    if (Number.isInteger(period) && isSame(0, period)) {
      let k = 1;
      while (k < n - period && isSame(k, k + period)) {
        k++;
      }
      if (k >= n - period) {
        return ring.slice(0, 2 * period);
      }
    }
  }
  return ring;
}

/** Cells are many tolerances wide, so that a box rarely lies near the edge of one. */
function cellKey(box: Bounds, tolerance: number): string {
  return box.map((b) => Math.floor(b / (64 * tolerance))).join(',');
}

/** Keys of all cells that a box within the tolerance of this one can lie in. */
function neighbourKeys(box: Bounds, tolerance: number): string[] {
  let keys: string[] = [''];
  for (const b of box) {
    const low = Math.floor((b - tolerance) / (64 * tolerance));
    const high = Math.floor((b + tolerance) / (64 * tolerance));
    const cells = low === high ? [low] : [low, high];
    keys = keys.flatMap((key) => cells.map((c) => (key === '' ? `${c}` : `${key},${c}`)));
  }
  return keys;
}

function sameBox(a: Bounds, b: Bounds, tolerance: number): boolean {
  return a.every((v, i) => Math.abs(v - b[i]) <= tolerance);
}

/** Whether two rings have the same area and the points of each lie along the other. */
function areTwins(a: readonly number[], b: readonly number[], tolerance: number): boolean {
  if (areSame(a, b)) {
    return true;
  }
  const areas = Math.abs(Math.abs(ringArea(a)) - Math.abs(ringArea(b)));
  return (
    areas <= tolerance * (length(a) + length(b)) && liesAlong(a, b, tolerance) && liesAlong(b, a, tolerance)
  );
}

/** Whether two rings have the same points from the same start, as copies of a block have. */
function areSame(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((v, i) => Math.abs(v - b[i]) <= SNAP_MM);
}

function length(ring: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    sum += Math.hypot(ring[j] - ring[i], ring[j + 1] - ring[i + 1]);
  }
  return sum;
}

function liesAlong(ring: readonly number[], other: readonly number[], tolerance: number): boolean {
  const points = ring.length / 2;
  const step = Math.max(1, Math.floor(points / CHECKED_POINTS));
  for (let k = 0; k < points; k += step) {
    if (distanceTo(other, ring[2 * k], ring[2 * k + 1], tolerance) > tolerance) {
      return false;
    }
  }
  return true;
}

/** Distance of a point from a ring, or the first one found that is within `enough`. */
function distanceTo(ring: readonly number[], x: number, y: number, enough: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length && best > enough; i += 2) {
    const j = (i + 2) % ring.length;
    const [ax, ay] = [ring[i], ring[i + 1]];
    const [dx, dy] = [ring[j] - ax, ring[j + 1] - ay];
    const len2 = dx * dx + dy * dy;
    const t = len2 > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / len2)) : 0;
    best = Math.min(best, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  }
  return best;
}
