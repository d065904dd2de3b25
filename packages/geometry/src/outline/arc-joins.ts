import { invariant, type Point } from '@pourproof/plane';
import type { StoppedDiscs } from './level-crossings.ts';
import type { OpenArcs } from './open-arcs.ts';

/** As a share of the radius, how far apart two discs may see one point: where they nearly touch, rounding is that of a square root. */
const MEETING_REL_TOL = 1e-6;

/** A direction along which regular artwork has no two places alike (our choice). */
const ODD_TURN = 0.7391;

/** How open arcs go on from each other. */
export interface ArcJoins {
  /** The arc that ends where each arc starts, -1 where that is the wall. */
  readonly before: Int32Array;
  /** The disc that each arc belongs to. */
  readonly discOf: Int32Array;
}

/**
 * Joins each open arc that starts on another disc's to the one that ends there. Where more than two discs pass through one point, as at a
 * reflex vertex that all of them touch, rounding tells which of them an arc starts or ends by, and they may not name each other: such
 * starts and ends, of which each narrow part has as many, are joined by where they lie. O(n log n) for n arcs, but for many discs on one line.
 */
export function joinArcs(crossings: StoppedDiscs, arcs: OpenArcs): ArcJoins {
  const { from, to, startBy, endBy, first } = arcs;
  const discOf = new Int32Array(from.length);
  for (let k = 0; k + 1 < first.length; k++) {
    discOf.fill(k, first[k], first[k + 1]);
  }
  const before = new Int32Array(from.length).fill(-1);
  const isTaken = new Uint8Array(from.length);
  const starts: Meeting[] = [];
  for (let arc = 0; arc < from.length; arc++) {
    const onto = startBy[arc];
    if (onto < 0) {
      continue;
    }
    const named = endOn(arcs, onto, discOf[arc]);
    if (named >= 0 && isTaken[named] === 0) {
      before[arc] = named;
      isTaken[named] = 1;
    } else {
      starts.push(meetingAt(crossings, discOf[arc], from[arc], arc));
    }
  }
  if (starts.length > 0) {
    const ends: Meeting[] = [];
    for (let arc = 0; arc < to.length; arc++) {
      if (endBy[arc] >= 0 && isTaken[arc] === 0) {
        ends.push(meetingAt(crossings, discOf[arc], to[arc], arc));
      }
    }
    joinByPlace(starts, ends, crossings.radius * MEETING_REL_TOL, before);
  }
  return { before, discOf };
}

/** The arc of a disc that ends by disc k, -1 for none. */
function endOn({ first, endBy }: OpenArcs, disc: number, k: number): number {
  for (let arc = first[disc]; arc < first[disc + 1]; arc++) {
    if (endBy[arc] === k) {
      return arc;
    }
  }
  return -1;
}

/** Where an arc starts or ends, and how far that lies along the odd direction. */
interface Meeting {
  readonly arc: number;
  readonly part: number;
  readonly place: Point;
  readonly along: number;
}

function meetingAt(crossings: StoppedDiscs, k: number, angle: number, arc: number): Meeting {
  const place = onArc(crossings, k, angle);
  const along = place[0] * Math.cos(ODD_TURN) + place[1] * Math.sin(ODD_TURN);
  return { arc, part: crossings.closes[k], place, along };
}

/** Joins each start to the nearest end of the same narrow part that no other start has. */
function joinByPlace(
  starts: readonly Meeting[],
  ends: Meeting[],
  tolerance: number,
  before: Int32Array,
): void {
  ends.sort((a, b) => a.along - b.along);
  const isTaken = new Uint8Array(ends.length);
  let low = 0;
  for (const start of [...starts].sort((a, b) => a.along - b.along)) {
    while (low < ends.length && ends[low].along < start.along - tolerance) {
      low++;
    }
    let best = -1;
    let least = tolerance;
    for (let i = low; i < ends.length && ends[i].along <= start.along + tolerance; i++) {
      const { part, place } = ends[i];
      const apart = Math.hypot(place[0] - start.place[0], place[1] - start.place[1]);
      if (part === start.part && isTaken[i] === 0 && apart <= least) {
        best = i;
        least = apart;
      }
    }
    invariant(best >= 0, 'arcs of overlapping discs end on each other');
    isTaken[best] = 1;
    before[start.arc] = ends[best].arc;
  }
}

/** A point of the arc of disc k, relative to the axis' origin. */
export function onArc({ x, y, radius, angle: start }: StoppedDiscs, k: number, angle: number): Point {
  const turn = start[k] + angle;
  return [x[k] + radius * Math.cos(turn), y[k] + radius * Math.sin(turn)];
}
