import { type FillRule, pollStep } from '@pourproof/plane';
import type { Arrangement } from './arrange.ts';

/** The shapes, how each is filled, and what counts as inside. */
export interface Filling {
  /** Shape of each drawn edge. */
  readonly shapeOfEdge: Uint32Array;
  readonly fillRules: readonly FillRule[];
  /** Group of each shape, 0 or 1. */
  readonly groupOfShape: Uint8Array;
  /** Whether a point is kept that lies in no group, in group 0 only, in group 1 only, in both. */
  readonly keeps: readonly [boolean, boolean, boolean, boolean];
}

/**
 * For each segment +1 where only the side above it is kept, −1 where only the side below is, 0 where it
 * bounds nothing.
 *
 * The links `below` form a forest: just below a segment is just above its parent. One depth-first walk that
 * undoes its steps keeps the winding number of every shape, in time linear in segments and owners.
 */
export function labelSides(arrangement: Arrangement, filling: Filling): Int8Array {
  const { segments, below } = arrangement;
  const count = segments.lo.length;
  const sides = new Int8Array(count);
  const firstChild = new Int32Array(count).fill(-1);
  const nextSibling = new Int32Array(count).fill(-1);
  let root = -1;
  for (let s = count - 1; s >= 0; s--) {
    pollStep();
    if (segments.owners[s] < 0) {
      continue;
    }
    const parent = below[s];
    if (parent < 0) {
      nextSibling[s] = root;
      root = s;
    } else {
      nextSibling[s] = firstChild[parent];
      firstChild[parent] = s;
    }
  }
  const winding = new Winding(filling);
  let at = root;
  while (at >= 0) {
    pollStep();
    const under = winding.isKept();
    winding.cross(segments, at, 1);
    sides[at] = Number(winding.isKept()) - Number(under);
    if (firstChild[at] >= 0) {
      at = firstChild[at];
      continue;
    }
    winding.cross(segments, at, -1);
    while (nextSibling[at] < 0 && below[at] >= 0) {
      at = below[at];
      winding.cross(segments, at, -1);
    }
    at = nextSibling[at];
  }
  return sides;
}

class Winding {
  readonly #filling: Filling;
  readonly #numbers: Int32Array;
  readonly #isEvenOdd: Uint8Array;
  readonly #shapesIn: [number, number] = [0, 0];

  constructor(filling: Filling) {
    this.#filling = filling;
    this.#numbers = new Int32Array(filling.fillRules.length);
    this.#isEvenOdd = Uint8Array.from(filling.fillRules, (rule) => Number(rule === 'evenodd'));
  }

  isKept(): boolean {
    const [a, b] = this.#shapesIn;
    return this.#filling.keeps[(a > 0 ? 1 : 0) + (b > 0 ? 2 : 0)];
  }

  /** Steps across segment s: upwards with direction 1, back with −1. */
  cross(segments: Arrangement['segments'], s: number, direction: number): void {
    for (let o = segments.owners[s]; o >= 0; o = segments.ownerNext[o]) {
      const shape = this.#filling.shapeOfEdge[segments.ownerEdge[o]];
      const was = this.#isInside(shape);
      this.#numbers[shape] += direction * segments.ownerSign[o];
      this.#shapesIn[this.#filling.groupOfShape[shape]] += this.#isInside(shape) - was;
    }
  }

  #isInside(shape: number): number {
    const n = this.#numbers[shape];
    return this.#isEvenOdd[shape] === 1 ? n & 1 : Number(n !== 0);
  }
}
