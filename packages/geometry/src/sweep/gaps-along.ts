import { type Arrangement, arrange, labelSides, SweepStatus, turn } from '@pourproof/arrangement';
import { packRings, pollStep, type Rings, ringCoords, ringStart, UnionFind } from '@pourproof/plane';

/**
 * Wood between two edges that face each other along y, over a range of x in which its length changes
 * linearly.
 */
export interface WoodGap {
  readonly from: number;
  readonly to: number;
  /** Length along y at `from` and `to`. */
  readonly lengthFrom: number;
  readonly lengthTo: number;
  /** y of the middle at `from` and `to`. */
  readonly middleFrom: number;
  readonly middleTo: number;
  /**
   * First rings of the parts of the cut on both sides, the smaller number first; −1 for the edge of the
   * board.
   */
  readonly rings: readonly [number, number];
}

/**
 * The wood of a board outside a cut as trapezoids along y, those that have the cut on at least one side.
 * Coordinates in mm; the board's rings are filled even-odd. O(n log n).
 *
 * @param longestMm trapezoids that are longer than this along y throughout are left out: of a board that is most of them
 */
export function gapsAlong(cut: Rings, board: Rings, longestMm: number = Infinity): WoodGap[] {
  const rings = packRings(
    [cut, board].flatMap((part) => Array.from(part.ringEnds, (_, k) => ringCoords(part, k))),
  );
  const cutPoints = cut.coords.length / 2;
  const shapeOfEdge = new Uint32Array(rings.coords.length / 2).fill(1, cutPoints);
  const arrangement = arrange(rings, shapeOfEdge, () => () => undefined);
  const filling = {
    shapeOfEdge,
    fillRules: ['nonzero', 'evenodd'] as const,
    groupOfShape: Uint8Array.of(0, 1),
  };
  // wood is board without cut
  const wood = labelSides(arrangement, { ...filling, keeps: [false, false, true, false] });
  const ringOfEdge = ringPerPoint(cut);
  const parts = new UnionFind(cut.ringEnds.length);
  const gaps: WoodGap[] = [];
  walkNeighbours(arrangement, (lower, upper, from, to) => {
    if (from === to) {
      return;
    }
    const below = ringAt(arrangement, ringOfEdge, lower);
    const above = ringAt(arrangement, ringOfEdge, upper);
    if (wood[lower] <= 0) {
      if (below >= 0 && above >= 0 && wood[lower] < 0) {
        parts.join(below, above);
      }
    } else if (below >= 0 || above >= 0) {
      const gap = gapOf(arrangement, [lower, upper], [from, to], [below, above]);
      if (gap.lengthFrom <= longestMm || gap.lengthTo <= longestMm) {
        gaps.push(gap);
      }
    }
  });
  const partOf = (ring: number): number => (ring < 0 ? -1 : parts.find(ring));
  return gaps.map(({ from, to, lengthFrom, lengthTo, middleFrom, middleTo, rings: [below, above] }) => {
    pollStep();
    const [a, b] = [partOf(below), partOf(above)];
    const between = [Math.min(a, b), Math.max(a, b)] as const;
    return { from, to, lengthFrom, lengthTo, middleFrom, middleTo, rings: between };
  });
}

function ringPerPoint(cut: Rings): Int32Array {
  const ringOf = new Int32Array(cut.coords.length / 2);
  for (let k = 0; k < cut.ringEnds.length; k++) {
    ringOf.fill(k, ringStart(cut, k), cut.ringEnds[k]);
  }
  return ringOf;
}

/** The ring of the cut that a segment lies on, −1 where it is only the edge of the board. */
function ringAt(arrangement: Arrangement, ringOfEdge: Int32Array, s: number): number {
  const { owners, ownerEdge, ownerNext } = arrangement.segments;
  for (let o = owners[s]; o >= 0; o = ownerNext[o]) {
    if (ownerEdge[o] < ringOfEdge.length) {
      return ringOfEdge[ownerEdge[o]];
    }
  }
  return -1;
}

/** Called with two neighbours along y and the range of x over which they are neighbours. */
type NeighbourSink = (lower: number, upper: number, from: number, to: number) => void;

function walkNeighbours(arrangement: Arrangement, sink: NeighbourSink): void {
  const { segments, below } = arrangement;
  const { x, y } = segments.vertices;
  const { starting, ending } = segmentsPerVertex(arrangement);
  const status = new SweepStatus();
  for (let s = 0; s < segments.lo.length; s++) {
    pollStep();
    status.addSlot();
  }
  const since = new Float64Array(segments.lo.length);
  const part = (lower: number, at: number): void => {
    if (lower >= 0 && status.above[lower] >= 0) {
      sink(lower, status.above[lower], since[lower], at);
      since[lower] = at;
    }
  };
  const order = Array.from(x.keys()).sort((u, v) => {
    pollStep();
    return x[u] - x[v] || y[u] - y[v];
  });
  for (const v of order) {
    pollStep();
    for (let k = ending.first[v]; k < ending.first[v + 1]; k++) {
      const s = ending.all[k];
      const lower = status.below[s];
      part(lower, x[v]);
      part(s, x[v]);
      status.remove(s);
    }
    const list = starting.all.subarray(starting.first[v], starting.first[v + 1]);
    if (list.length > 1) {
      list.sort((a, b) => -turn(segments.vertices, v, segments.hi[a], segments.hi[b]));
    }
    for (const s of list) {
      part(below[s], x[v]);
      status.insertAbove(below[s], s);
      since[s] = x[v];
      if (below[s] >= 0) {
        since[below[s]] = x[v];
      }
    }
  }
}

/** Segments by vertex: those of vertex v are `all[first[v]]` up to before `all[first[v + 1]]`. */
interface PerVertex {
  readonly first: Int32Array;
  readonly all: Int32Array;
}

function segmentsPerVertex({ segments }: Arrangement): {
  readonly starting: PerVertex;
  readonly ending: PerVertex;
} {
  const { lo, hi, owners, vertices } = segments;
  const count = vertices.x.length;
  return { starting: byVertex(lo, owners, count), ending: byVertex(hi, owners, count) };
}

function byVertex(vertexOf: ArrayLike<number>, owners: ArrayLike<number>, count: number): PerVertex {
  const first = new Int32Array(count + 1);
  for (let s = 0; s < vertexOf.length; s++) {
    pollStep();
    first[vertexOf[s] + 1] += owners[s] >= 0 ? 1 : 0;
  }
  for (let v = 0; v < count; v++) {
    first[v + 1] += first[v];
  }
  const next = first.slice();
  const all = new Int32Array(first[count]);
  for (let s = 0; s < vertexOf.length; s++) {
    pollStep();
    if (owners[s] >= 0) {
      all[next[vertexOf[s]]++] = s;
    }
  }
  return { first, all };
}

function gapOf(
  arrangement: Arrangement,
  [lower, upper]: readonly [number, number],
  [from, to]: readonly [number, number],
  rings: readonly [number, number],
): WoodGap {
  const [a, b] = [heightAt(arrangement, lower, from), heightAt(arrangement, upper, from)];
  const [c, d] = [heightAt(arrangement, lower, to), heightAt(arrangement, upper, to)];
  return {
    from,
    to,
    lengthFrom: Math.max(0, b - a),
    lengthTo: Math.max(0, d - c),
    middleFrom: (a + b) / 2,
    middleTo: (c + d) / 2,
    rings,
  };
}

function heightAt(arrangement: Arrangement, s: number, at: number): number {
  const { lo, hi, vertices } = arrangement.segments;
  const { x, y } = vertices;
  const [u, v] = [lo[s], hi[s]];
  return x[u] === x[v] ? y[u] : y[u] + ((at - x[u]) / (x[v] - x[u])) * (y[v] - y[u]);
}
