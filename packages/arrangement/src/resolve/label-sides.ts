import type { FillRule } from '@pourproof/plane';
import type { Arrangement } from './arrange.ts';

/** Which shapes exist, how each is filled, and which sides count as inside. */
export interface Filling {
  /** Shape of each drawn edge. */
  readonly shapeOfEdge: Uint32Array;
  readonly fillRules: readonly FillRule[];
  /** Group of each shape, 0 or 1. */
  readonly groupOfShape: Uint8Array;
  /** Whether a place is kept that lies in no group, in group 0 only, in group 1 only, in both. */
  readonly keeps: readonly [boolean, boolean, boolean, boolean];
}

/**
 * For each segment +1 when the kept side is above it only, −1 when it is below it only, 0 when it is no boundary.
 *
 * "Below" links make a forest in which the place just below a segment is the place just above its parent; one walk with undoing
 * keeps the winding number of every shape, so the cost is linear in the number of segments and owners.
 */
export function labelSides(arrangement: Arrangement, filling: Filling): Int8Array {
  const { segments, below } = arrangement;
  const count = segments.lo.length;
  const sides = new Int8Array(count);
  const firstChild = new Int32Array(count).fill(-1);
  const nextSibling = new Int32Array(count).fill(-1);
  let root = -1;
  for (let s = count - 1; s >= 0; s--) {
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

  /** Steps over segment s, upwards with direction 1, back with −1. */
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
