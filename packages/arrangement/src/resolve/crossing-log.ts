import { type Point, pollStep, type Rings, ringStart } from '@pourproof/plane';
import { orient2d } from 'robust-predicates';
import type { SegmentSet } from './segment-set.ts';
import { strandsCross } from './strands-cross.ts';

/** A place where drawn edges cross. */
export interface Crossing {
  readonly atMm: Point;
  /** Whether one shape crosses itself or two shapes cross each other. */
  readonly kind: 'self' | 'between';
  /** Numbers of the two shapes, the smaller first; the same twice for `self`. */
  readonly regions: readonly [number, number];
}

/**
 * Strands at one point that each strand is compared with at most: where very many meet, that is enough to see
 * that they cross.
 */
const MAX_STRANDS = 32;

interface Strand {
  readonly shape: number;
  readonly from: number;
  readonly to: number;
}

/** Collects the crossings of drawn edges, each place once per pair of shapes. */
export class CrossingLog {
  readonly #rings: Rings;
  readonly #shapeOfEdge: Uint32Array;
  readonly #segments: SegmentSet;
  readonly #nextPoint: Uint32Array;
  /** First pair of shapes at each place; further pairs are rare. */
  readonly #firstPair = new Map<number, number>();
  readonly #otherPairs = new Map<number, Set<number>>();
  /** Pairs (vertex, drawn edge) of edges that pass through a vertex. */
  readonly #passing: number[] = [];
  #count = 0;

  constructor(rings: Rings, shapeOfEdge: Uint32Array, segments: SegmentSet) {
    this.#rings = rings;
    this.#shapeOfEdge = shapeOfEdge;
    this.#segments = segments;
    this.#nextPoint = nextPoints(rings);
  }

  /** How many crossings there are. */
  get count(): number {
    return this.#count;
  }

  /**
   * Records that segments with these owner lists cross at vertex v or, with −1 for the second, that the first
   * passes through it.
   */
  add(v: number, ownersA: number, ownersB: number): void {
    const a = this.#segments.ownerEdge[ownersA];
    if (ownersB < 0) {
      this.#passing.push(v, a);
      return;
    }
    const b = this.#segments.ownerEdge[ownersB];
    if (this.#cross(a, b)) {
      this.#note(v, this.#shapeOfEdge[a], this.#shapeOfEdge[b]);
    }
  }

  /** Adds the crossings at drawn points: where two outlines pass a point and change sides there. */
  addAtPoints(vertexOfPoint: Uint32Array): void {
    const strands = new Map<number, Strand[]>();
    const timesDrawn = new Uint8Array(this.#segments.vertices.x.length);
    for (const v of vertexOfPoint) {
      pollStep();
      timesDrawn[v] = Math.min(2, timesDrawn[v] + 1);
    }
    for (let k = 0; k < this.#passing.length; k += 2) {
      pollStep();
      const [v, e] = [this.#passing[k], this.#passing[k + 1]];
      timesDrawn[v] = 2;
      const ends = [vertexOfPoint[e], vertexOfPoint[this.#nextPoint[e]]] as const;
      if (ends[0] !== v && ends[1] !== v) {
        addStrand(strands, v, { shape: this.#shapeOfEdge[e], from: ends[0], to: ends[1] });
      }
    }
    const before = new Int32Array(vertexOfPoint.length).fill(-1);
    this.#nextPoint.forEach((next, i) => {
      pollStep();
      before[next] = i;
    });
    for (let i = 0; i < vertexOfPoint.length; i++) {
      pollStep();
      const v = vertexOfPoint[i];
      const from = vertexOfPoint[before[i]];
      const to = vertexOfPoint[this.#nextPoint[i]];
      if (timesDrawn[v] === 2 && from !== v && to !== v) {
        addStrand(strands, v, { shape: this.#shapeOfEdge[i], from, to });
      }
    }
    for (const [v, list] of strands) {
      pollStep();
      this.#noteStrands(v, list);
    }
  }

  #noteStrands(v: number, list: readonly Strand[]): void {
    for (let i = 0; i < list.length; i++) {
      for (let j = i + 1; j < Math.min(list.length, i + MAX_STRANDS); j++) {
        if (strandsCross(this.#segments.vertices, v, list[i], list[j])) {
          this.#note(v, list[i].shape, list[j].shape);
        }
      }
    }
  }

  #note(v: number, shapeA: number, shapeB: number): void {
    // one number for both shapes, exact below 2²⁶ of them
    const pair = Math.min(shapeA, shapeB) * 2 ** 26 + Math.max(shapeA, shapeB);
    const first = this.#firstPair.get(v);
    if (first === undefined) {
      this.#firstPair.set(v, pair);
    } else {
      const others = this.#otherPairs.get(v) ?? new Set<number>();
      if (first === pair || others.has(pair)) {
        return;
      }
      this.#otherPairs.set(v, others.add(pair));
    }
    this.#count++;
  }

  /** The first crossings, by x, then y; at most `most`. */
  listed(most: number): readonly Crossing[] {
    const { x, y } = this.#segments.vertices;
    const places = [...this.#firstPair.keys()].sort((u, v) => x[u] - x[v] || y[u] - y[v]);
    const list: Crossing[] = [];
    for (const v of places.slice(0, most)) {
      for (const pair of [this.#firstPair.get(v) ?? 0, ...(this.#otherPairs.get(v) ?? [])]) {
        const i = Math.floor(pair / 2 ** 26);
        const j = pair % 2 ** 26;
        list.push({ atMm: [x[v], y[v]], kind: i === j ? 'self' : 'between', regions: [i, j] });
      }
    }
    return list.slice(0, most);
  }

  #cross(a: number, b: number): boolean {
    const p = this.#rings.coords;
    const a1 = 2 * this.#nextPoint[a];
    const b1 = 2 * this.#nextPoint[b];
    const [a0, b0] = [2 * a, 2 * b];
    return (
      orient2d(p[a0], p[a0 + 1], p[a1], p[a1 + 1], p[b0], p[b0 + 1]) *
        orient2d(p[a0], p[a0 + 1], p[a1], p[a1 + 1], p[b1], p[b1 + 1]) <
        0 &&
      orient2d(p[b0], p[b0 + 1], p[b1], p[b1 + 1], p[a0], p[a0 + 1]) *
        orient2d(p[b0], p[b0 + 1], p[b1], p[b1 + 1], p[a1], p[a1 + 1]) <
        0
    );
  }
}

function addStrand(strands: Map<number, Strand[]>, v: number, strand: Strand): void {
  const list = strands.get(v);
  if (list === undefined) {
    strands.set(v, [strand]);
  } else {
    list.push(strand);
  }
}

function nextPoints(rings: Rings): Uint32Array {
  const next = new Uint32Array(rings.coords.length / 2);
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    for (let i = from; i < to; i++) {
      pollStep();
      next[i] = i + 1 === to ? from : i + 1;
    }
  }
  return next;
}
