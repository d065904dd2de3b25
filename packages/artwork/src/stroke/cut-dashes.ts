import type { Path, Segment, Subpath } from '../path/path.ts';
import { directionAt, isPointSegment } from '../path/segment-at.ts';
import { measureSegment, type SegmentLength } from './segment-length.ts';
import { segmentPart } from './segment-part.ts';

/** More dashes than this in one shape count as a mistake. */
export const MAX_DASHES = 100_000;

/**
 * A dash of no length becomes a line of twice this fraction of its segment's length: long enough that its
 * direction survives rounding, far too short to be seen.
 */
const DOT_REL = 1e-9;

/**
 * The dashes of a path as open subpaths (SVG 2 §13.5.6), cut at exact lengths along its curves. On a closed
 * subpath a dash that runs over the start is one dash. A dash of no length keeps the path's direction.
 * `undefined` when there would be more than {@link MAX_DASHES}.
 *
 * @param pattern dash, gap, dash, …: an even number of lengths ≥ 0 with a sum above 0, in the path's unit
 * @param offset where in the pattern each subpath starts, any sign
 */
export function cutDashes(path: Path, pattern: readonly number[], offset: number): Path | undefined {
  const out: Subpath[] = [];
  for (const sub of path) {
    const segments = Array.from(sub.segments).filter((s) => !isPointSegment(s));
    if (segments.length === 0) {
      out.push(sub);
      continue;
    }
    const lengths = segments.map(measureSegment);
    const total = lengths.reduce((sum, l) => sum + l.total, 0);
    const period = pattern.reduce((sum, l) => sum + l, 0);
    if (out.length + (total / period + 1) * pattern.length > 2 * MAX_DASHES) {
      return undefined;
    }
    const dashes = dashSpans(pattern, period, offset, total);
    out.push(...takeDashes(segments, lengths, dashes, total, sub.closed));
  }
  return out;
}

/**
 * Start and end of each dash along a subpath, from 0 to its length; the first may have begun before, the last
 * may go on.
 */
function dashSpans(
  pattern: readonly number[],
  period: number,
  offset: number,
  total: number,
): [number, number][] {
  const spans: [number, number][] = [];
  const shift = offset - period * Math.floor(offset / period);
  let pos = -shift;
  for (let turn = 0; pos <= total; turn++) {
    // from the turn's number, so that rounding does not add up
    pos = turn * period - shift;
    for (let i = 0; i < pattern.length; i += 2) {
      const end = pos + pattern[i];
      if (pos === end ? pos >= 0 && pos < total : end > 0 && pos < total) {
        spans.push([Math.max(0, pos), Math.min(total, end)]);
      }
      pos = end + pattern[i + 1];
    }
  }
  return spans;
}

function takeDashes(
  segments: readonly Segment[],
  lengths: readonly SegmentLength[],
  spans: readonly [number, number][],
  total: number,
  closed: boolean,
): Subpath[] {
  const dashes = spans.map(([from, to]) => takeSpan(segments, lengths, from, to));
  const firstSpan = spans[0];
  const lastSpan = spans[spans.length - 1];
  const runsOver =
    closed &&
    firstSpan !== undefined &&
    lastSpan !== undefined &&
    firstSpan[0] === 0 &&
    lastSpan[1] === total;
  const first = dashes[0];
  if (!runsOver || first === undefined) {
    return dashes;
  }
  if (dashes.length === 1) {
    return [{ ...first, closed: true }];
  }
  const last = dashes[dashes.length - 1];
  const joined = { ...last, segments: [...last.segments, ...first.segments] };
  return [...dashes.slice(1, -1), joined];
}

function takeSpan(
  segments: readonly Segment[],
  lengths: readonly SegmentLength[],
  from: number,
  to: number,
): Subpath {
  const parts: Segment[] = [];
  let before = 0;
  segments.forEach((segment, i) => {
    const length = lengths[i];
    const a = Math.max(0, from - before);
    const b = Math.min(length.total, to - before);
    if (b > a) {
      parts.push(segmentPart(segment, length.parameterAt(a), length.parameterAt(b)));
    } else if (from === to && parts.length === 0 && a <= length.total && from >= before) {
      parts.push(shortPiece(segment, length.parameterAt(a), length.total));
    }
    before += length.total;
  });
  const start = parts[0];
  return { x0: start.x0, y0: start.y0, segments: parts, closed: false };
}

/** A dash of no length as a line too short to be seen, which gives its caps their direction. */
function shortPiece(segment: Segment, t: number, length: number): Segment {
  const point = segmentPart(segment, t, t);
  const [tx, ty] = directionAt(segment, t) ?? [1, 0];
  const e = DOT_REL * length;
  return {
    kind: 'line',
    x0: point.x0 - e * tx,
    y0: point.y0 - e * ty,
    x: point.x0 + e * tx,
    y: point.y0 + e * ty,
  };
}
