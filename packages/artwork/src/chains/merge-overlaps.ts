import { boundsOf, type Point } from '@pourproof/plane';
import { type Doubled, type Line, SNAP_MM } from './chain-graph.ts';

/**
 * Directions that differ by less, in radians, are one: 1 µm in 10 m. A larger angle would merge lines that
 * part visibly at their ends.
 */
const SAME_DIRECTION = 1e-7;

/** Straight lines as intervals on infinite lines, by the number of the line. */
interface Intervals {
  readonly lines: readonly Line[];
  /** Direction, from 0 to π. */
  readonly angle: Float64Array;
  /** Distance of the infinite line from a reference point. */
  readonly offset: Float64Array;
  /** Where the interval begins and ends along it. */
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/** What {@link mergeOverlaps} makes. */
interface Merged {
  readonly lines: Line[];
  /** Drawn piece that each line comes from. */
  readonly pieceOf: number[];
  readonly doubled: Doubled[];
}

/**
 * Splits straight lines that overlap on one infinite line at each other's ends and keeps each interval once;
 * all other lines are returned as they are. Touching end to end is not an overlap.
 *
 * @returns the lines, and each place where a line lies on another
 */
export function mergeOverlaps(lines: readonly Line[]): Merged {
  const merged: Merged = { lines: [], pieceOf: [], doubled: [] };
  const intervals = measureIntervals(lines);
  const straight: number[] = [];
  for (let i = 0; i < lines.length; i++) {
    if (Number.isNaN(intervals.angle[i])) {
      keep(merged, lines[i], i);
    } else {
      straight.push(i);
    }
  }
  const order = Uint32Array.from(straight);
  for (const parallel of runs(order, intervals.angle, SAME_DIRECTION)) {
    for (const onLine of runs(parallel, intervals.offset, 2 * SNAP_MM)) {
      mergeLine(onLine, intervals, merged);
    }
  }
  return merged;
}

function keep(merged: Merged, line: Line, piece: number): void {
  merged.lines.push(line);
  merged.pieceOf.push(piece);
}

/** Angle NaN for lines that are not straight or have no length. */
function measureIntervals(lines: readonly Line[]): Intervals {
  const n = lines.length;
  const [angle, offset] = [new Float64Array(n), new Float64Array(n)];
  const [from, to] = [new Float64Array(n), new Float64Array(n)];
  const [x0, y0] = referencePoint(lines);
  for (let i = 0; i < n; i++) {
    const line = lines[i];
    const [ax, ay, bx, by] = line as [number, number, number, number];
    if (line.length !== 4 || Math.hypot(bx - ax, by - ay) <= SNAP_MM) {
      angle[i] = Number.NaN;
      continue;
    }
    const a = halfTurnAngle(Math.atan2(by - ay, bx - ax));
    const [c, s] = [Math.cos(a), Math.sin(a)];
    const u = c * (ax - x0) + s * (ay - y0);
    const v = c * (bx - x0) + s * (by - y0);
    angle[i] = a;
    offset[i] = c * (ay - y0) - s * (ax - x0);
    from[i] = Math.min(u, v);
    to[i] = Math.max(u, v);
  }
  return { lines, angle, offset, from, to };
}

/** The same direction or its opposite, from about 0 to about π. */
function halfTurnAngle(angle: number): number {
  const positive = angle < -SAME_DIRECTION ? angle + Math.PI : angle;
  return positive > Math.PI - SAME_DIRECTION ? positive - Math.PI : positive;
}

function referencePoint(lines: readonly Line[]): Point {
  const [ax, ay] = boundsOf(lines[0] ?? [0, 0]);
  const [bx, by] = boundsOf(lines.at(-1) ?? [0, 0]);
  return [(ax + bx) / 2, (ay + by) / 2];
}

/**
 * Sorts numbers by their rank and splits them where a rank is further than `span` from the first of its run.
 */
function* runs(numbers: Uint32Array, rank: Float64Array, span: number): Generator<Uint32Array> {
  const rankOf = (i: number): number => rank[i];
  if (numbers.length > 1) {
    numbers.sort((a, b) => rankOf(a) - rankOf(b));
  }
  let start = 0;
  for (let k = 1; k <= numbers.length; k++) {
    if (k === numbers.length || rankOf(numbers[k]) - rankOf(numbers[start]) > span) {
      yield numbers.subarray(start, k);
      start = k;
    }
  }
}

function mergeLine(onLine: Uint32Array, intervals: Intervals, merged: Merged): void {
  const { lines, from, to } = intervals;
  if (onLine.length > 1) {
    onLine.sort((a, b) => from[a] - from[b]);
  }
  let start = 0;
  let end = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= onLine.length; k++) {
    const i = onLine[k];
    if (k > start && (i === undefined || from[i] >= end - SNAP_MM)) {
      const first = onLine[start];
      if (k - start === 1) {
        keep(merged, lines[first], first);
      } else {
        mergeCluster(onLine.subarray(start, k), intervals, merged);
      }
      start = k;
      end = Number.NEGATIVE_INFINITY;
    }
    if (i !== undefined) {
      end = Math.max(end, to[i]);
    }
  }
}

/** Keeps what lies between neighbouring ends of a cluster of overlapping intervals, once. */
function mergeCluster(cluster: Uint32Array, { lines, angle, from, to }: Intervals, merged: Merged): void {
  const ends: { along: number; x: number; y: number; piece: number }[] = [];
  const direction = angle[cluster[0]];
  let reach = Number.NEGATIVE_INFINITY;
  for (const i of cluster) {
    const [ax, ay, bx, by] = lines[i] as [number, number, number, number];
    const [low, high] = [from[i], to[i]];
    if (low < reach - SNAP_MM) {
      merged.doubled.push({ atMm: [(ax + bx) / 2, (ay + by) / 2], piece: i });
    }
    reach = Math.max(reach, high);
    // which end comes first along the line is told by the same projection as `from`
    const forward = Math.cos(direction) * (bx - ax) + Math.sin(direction) * (by - ay) > 0;
    ends.push({ along: forward ? low : high, x: ax, y: ay, piece: i });
    ends.push({ along: forward ? high : low, x: bx, y: by, piece: i });
  }
  ends.sort((a, b) => a.along - b.along);
  let last = ends[0];
  for (const end of ends) {
    if (end.along - last.along > SNAP_MM) {
      keep(merged, [last.x, last.y, end.x, end.y], last.piece);
      last = end;
    }
  }
}
