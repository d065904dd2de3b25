import { boundsOf, type Point } from '@pourproof/plane';
import { SNAP_MM, type TracedPiece } from './chain-graph.ts';

/** Directions that differ by less are one, in radians: 1 µm in 10 m. */
const SAME_DIRECTION = 1e-7;

/** A straight piece as a stretch of its line. */
interface Stretch {
  readonly piece: TracedPiece;
  readonly angle: number;
  /** Distance of the line from the reference point. */
  offset: number;
  from: number;
  to: number;
}

/**
 * Takes straight pieces that overlap on one line apart at each other's ends and keeps each stretch once; all other pieces
 * come back as they are. Touching end to end is no overlap.
 *
 * @returns the pieces, and each place where a piece lay upon another
 */
export function mergeOverlaps(pieces: readonly TracedPiece[]): {
  pieces: TracedPiece[];
  doubled: { atMm: Point; piece: number }[];
} {
  const kept: TracedPiece[] = [];
  const stretches: Stretch[] = [];
  const [x0, y0] = referencePoint(pieces);
  for (const piece of pieces) {
    const stretch = piece.coords.length === 4 ? stretchOf(piece, x0, y0) : undefined;
    if (stretch) {
      stretches.push(stretch);
    } else {
      kept.push(piece);
    }
  }
  const doubled: { atMm: Point; piece: number }[] = [];
  stretches.sort((a, b) => a.angle - b.angle);
  for (const parallel of runs(stretches, (s) => s.angle, SAME_DIRECTION)) {
    parallel.sort((a, b) => a.offset - b.offset);
    for (const onLine of runs(parallel, (s) => s.offset, 2 * SNAP_MM)) {
      mergeLine(onLine, kept, doubled);
    }
  }
  return { pieces: kept, doubled };
}

function referencePoint(pieces: readonly TracedPiece[]): Point {
  const first = pieces[0]?.coords;
  const last = pieces.at(-1)?.coords;
  const [ax, ay] = boundsOf(first ?? [0, 0]);
  const [bx, by] = boundsOf(last ?? [0, 0]);
  return [(ax + bx) / 2, (ay + by) / 2];
}

/** `undefined` for a piece without length. */
function stretchOf(piece: TracedPiece, x0: number, y0: number): Stretch | undefined {
  const [ax, ay, bx, by] = piece.coords as [number, number, number, number];
  const length = Math.hypot(bx - ax, by - ay);
  if (length <= SNAP_MM) {
    return undefined;
  }
  let angle = Math.atan2(by - ay, bx - ax);
  if (angle < -SAME_DIRECTION) {
    angle += Math.PI;
  }
  if (angle > Math.PI - SAME_DIRECTION) {
    angle -= Math.PI;
  }
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const u = c * (ax - x0) + s * (ay - y0);
  const v = c * (bx - x0) + s * (by - y0);
  return {
    piece,
    angle,
    offset: c * (ay - y0) - s * (ax - x0),
    from: Math.min(u, v),
    to: Math.max(u, v),
  };
}

/** Splits a sorted list where a value is further than `span` from the first of its run. */
function* runs<T>(sorted: readonly T[], rankOf: (item: T) => number, span: number): Generator<T[]> {
  let run: T[] = [];
  for (const item of sorted) {
    if (run.length > 0 && rankOf(item) - rankOf(run[0] as T) > span) {
      yield run;
      run = [];
    }
    run.push(item);
  }
  if (run.length > 0) {
    yield run;
  }
}

function mergeLine(onLine: Stretch[], kept: TracedPiece[], doubled: { atMm: Point; piece: number }[]): void {
  onLine.sort((a, b) => a.from - b.from);
  let cluster: Stretch[] = [];
  let end = Number.NEGATIVE_INFINITY;
  const flush = (): void => {
    if (cluster.length === 1) {
      kept.push((cluster[0] as Stretch).piece);
    } else {
      mergeCluster(cluster, kept, doubled);
    }
  };
  for (const stretch of onLine) {
    if (stretch.from >= end - SNAP_MM && cluster.length > 0) {
      flush();
      cluster = [];
      end = Number.NEGATIVE_INFINITY;
    }
    cluster.push(stretch);
    end = Math.max(end, stretch.to);
  }
  if (cluster.length > 0) {
    flush();
  }
}

/** Keeps what lies between neighbouring ends of a cluster of overlapping stretches, once. */
function mergeCluster(
  cluster: readonly Stretch[],
  kept: TracedPiece[],
  doubled: { atMm: Point; piece: number }[],
): void {
  const ends: { along: number; x: number; y: number; piece: number }[] = [];
  let reach = Number.NEGATIVE_INFINITY;
  for (const { piece, from, to } of cluster) {
    const [ax, ay, bx, by] = piece.coords as [number, number, number, number];
    if (from < reach - SNAP_MM) {
      doubled.push({ atMm: [(ax + bx) / 2, (ay + by) / 2], piece: piece.piece });
    }
    reach = Math.max(reach, to);
    // which end comes first along the line is told by the same projection as `from`
    const startFirst = isForward(piece.coords, cluster[0] as Stretch);
    ends.push({ along: startFirst ? from : to, x: ax, y: ay, piece: piece.piece });
    ends.push({ along: startFirst ? to : from, x: bx, y: by, piece: piece.piece });
  }
  ends.sort((a, b) => a.along - b.along);
  let last = ends[0] as (typeof ends)[number];
  for (const end of ends) {
    if (end.along - last.along > SNAP_MM) {
      kept.push({ coords: [last.x, last.y, end.x, end.y], piece: last.piece });
      last = end;
    }
  }
}

function isForward(coords: readonly number[], { angle }: Stretch): boolean {
  const [ax, ay, bx, by] = coords as [number, number, number, number];
  return Math.cos(angle) * (bx - ax) + Math.sin(angle) * (by - ay) > 0;
}
