import type { Path, Segment, Subpath } from '../path/path.ts';
import { directionAt, isPointSegment } from '../path/segment-at.ts';
import { measureSegment, type SegmentLength } from './segment-length.ts';
import { segmentPart } from './segment-part.ts';

/** More dashes than this in one shape count as a mistake. */
export const MAX_DASHES = 100_000;

/**
 * Dashes that begin nearer to each other than this, mm, are no dashes to any bit: half of a hairline (our choice). Without it a pattern of a
 * micrometre takes seconds to make what no one can cut.
 */
export const MIN_DASH_PERIOD_MM = 0.05;

/**
 * A dash of no length becomes a line of twice this fraction of its segment's length: long enough that its
 * direction survives rounding, far too short to be seen.
 */
const DOT_REL = 1e-9;

/**
 * The dashes of a path as open subpaths (SVG 2 §13.5.6), cut at exact lengths along its curves. On a closed
 * subpath a dash that runs over the start is one dash. A dash of no length keeps the path's direction.
 * `undefined` when there would be more than {@link MAX_DASHES}, or when they come closer than told.
 *
 * @param pattern dash, gap, dash, …: an even number of lengths ≥ 0 with a sum above 0, in the path's unit
 * @param offset where in the pattern each subpath starts, any sign
 * @param leastPeriod least mean distance from dash to dash, in the path's unit
 */
export function cutDashes(
  path: Path,
  pattern: readonly number[],
  offset: number,
  leastPeriod = 0,
): Path | undefined {
  const out: Subpath[] = [];
  const period = pattern.reduce((sum, l) => sum + l, 0);
  if (period / (pattern.length / 2) < leastPeriod) {
    return undefined;
  }
  for (const sub of path) {
    const segments = Array.from(sub.segments).filter((s) => !isPointSegment(s));
    if (segments.length === 0) {
      out.push(sub);
      continue;
    }
    const lengths = segments.map(measureSegment);
    const total = lengths.reduce((sum, l) => sum + l.total, 0);
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
  const ends: number[] = [];
  for (const { total: length } of lengths) {
    ends.push((ends.at(-1) ?? 0) + length);
  }
  let at = 0;
  const dashes = spans.map(([from, to]) => {
    // spans rise, so that none begins before the segment where the last one did
    while (at < ends.length - 1 && ends[at] < from) {
      at++;
    }
    return takeSpan(segments, lengths, [from, to], { first: at, before: ends[at - 1] ?? 0 });
  });
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
  [from, to]: readonly [number, number],
  start: { readonly first: number; readonly before: number },
): Subpath {
  const parts: Segment[] = [];
  let { before } = start;
  for (let i = start.first; i < segments.length && before <= to; i++) {
    const [segment, length] = [segments[i], lengths[i]];
    const a = Math.max(0, from - before);
    const b = Math.min(length.total, to - before);
    if (b > a) {
      parts.push(segmentPart(segment, length.parameterAt(a), length.parameterAt(b)));
    } else if (from === to && parts.length === 0 && a <= length.total && from >= before) {
      parts.push(shortPiece(segment, length.parameterAt(a), length.total));
    }
    before += length.total;
  }
  const begin = parts[0];
  return { x0: begin.x0, y0: begin.y0, segments: parts, closed: false };
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
