import { invariant, pollStep } from '@pourproof/plane';
import type { Arrangement } from './arrange.ts';
import { isBefore, type SegmentSet, turn } from './segment-set.ts';

/**
 * The boundary rings of the kept side, as vertex numbers: outer rings have positive area.
 *
 * Where several rings meet in a vertex, each stays within one wedge of the kept side: it leaves by the next
 * edge around the vertex. So parts that touch in a point become separate rings, and a hole that touches its
 * outline becomes part of it.
 */
export function traceRings(arrangement: Arrangement, sides: Int8Array): number[][] {
  const { segments } = arrangement;
  const count = segments.lo.length;
  const leaving = leavingSegments(segments, sides);
  const isUsed = new Uint8Array(count);
  const rings: number[][] = [];
  for (let s = 0; s < count; s++) {
    pollStep();
    if (sides[s] === 0 || isUsed[s] === 1) {
      continue;
    }
    const ring: number[] = [];
    let at = s;
    do {
      pollStep();
      isUsed[at] = 1;
      invariant(ring.length <= count, 'boundary rings close');
      ring.push(sides[at] > 0 ? segments.lo[at] : segments.hi[at]);
      at = leaving.after(at);
    } while (at !== s);
    rings.push(ring);
  }
  return rings;
}

interface Leaving {
  after(s: number): number;
}

function leavingSegments(segments: SegmentSet, sides: Int8Array): Leaving {
  const { lo, hi, vertices } = segments;
  const first = new Int32Array(vertices.x.length).fill(-1);
  const crowded = new Map<number, number[]>();
  for (let s = 0; s < lo.length; s++) {
    pollStep();
    if (sides[s] === 0) {
      continue;
    }
    const v = sides[s] > 0 ? lo[s] : hi[s];
    if (first[v] < 0) {
      first[v] = s;
    } else {
      const list = crowded.get(v) ?? [first[v]];
      list.push(s);
      crowded.set(v, list);
    }
  }
  const headOf = (s: number): number => (sides[s] > 0 ? hi[s] : lo[s]);
  const tailOf = (s: number): number => (sides[s] > 0 ? lo[s] : hi[s]);
  for (const [v, list] of crowded) {
    list.sort((a, b) => compareAngles(segments, v, headOf(a), headOf(b)));
  }
  return {
    after(s) {
      const v = headOf(s);
      const list = crowded.get(v);
      return list === undefined ? first[v] : lastBefore(segments, v, list, headOf, tailOf(s));
    },
  };
}

/** The last leaving segment whose direction comes before that of `to`, cyclically. */
function lastBefore(
  segments: SegmentSet,
  v: number,
  list: readonly number[],
  headOf: (s: number) => number,
  to: number,
): number {
  let from = 0;
  let end = list.length;
  while (from < end) {
    const middle = (from + end) >> 1;
    if (compareAngles(segments, v, headOf(list[middle]), to) < 0) {
      from = middle + 1;
    } else {
      end = middle;
    }
  }
  return list[from === 0 ? list.length - 1 : from - 1];
}

/** Compares two directions from v by their angle from −y over +x to +y and back; exact. */
function compareAngles(segments: SegmentSet, v: number, a: number, b: number): number {
  const aAhead = isBefore(segments.vertices, v, a);
  const bAhead = isBefore(segments.vertices, v, b);
  if (aAhead !== bAhead) {
    return aAhead ? -1 : 1;
  }
  return -turn(segments.vertices, v, a, b);
}
