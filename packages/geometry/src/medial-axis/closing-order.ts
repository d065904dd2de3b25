import {
  type Cells,
  DUE,
  GROWS_R,
  GROWS_X,
  GROWS_Y,
  NEXT,
  PREVIOUS,
  SITE,
  SITE_TX,
  SITE_TY,
  SITE_X,
  SITE_Y,
  X,
} from './cell-layout.ts';
import { BEYOND_REL_TOL } from './tolerances.ts';

/**
 * Decides which of two neighbouring cells closes first where their clearances tie, as between parallel walls:
 * clearances may differ by less than rounding there while the discs lie far apart. A disc that touches a
 * neighbour's site where that has no cell any more comes after the neighbour has closed.
 */
export class ClosingOrder {
  readonly #numbers: Float64Array;
  readonly #links: Int32Array;
  /** Number of edges; sites from it on are vertices. */
  readonly #count: number;
  /** How far beyond a contact has to lie to count, mm. */
  readonly #slack: number;

  constructor({ numbers, links }: Cells, count: number, extent: number) {
    this.#numbers = numbers;
    this.#links = links;
    this.#count = count;
    this.#slack = BEYOND_REL_TOL * extent;
  }

  /**
   * Whether the cell of instance a closes before that of the next instance c; their clearances are finite and
   * tie.
   */
  isFirst(a: number, c: number): boolean {
    const isLate = this.#touchesBeyondEnd(a, c);
    const isOtherLate = this.#touchesBeforeStart(c, a);
    if (isLate !== isOtherLate) {
      return isOtherLate;
    }
    const due = this.#numbers[a + DUE];
    const otherDue = this.#numbers[c + DUE];
    return due < otherDue || (due === otherDue && a < c);
  }

  /**
   * Whether the disc of a cell touches the site of another beyond where that one's bisector with its next
   * starts.
   */
  #touchesBeyondEnd(at: number, other: number): boolean {
    return this.#isFarther(other, at + X, other, this.#links[2 * other + NEXT], 1);
  }

  /**
   * Whether the disc of a cell touches the site of another before where that one's bisector with its previous
   * starts.
   */
  #touchesBeforeStart(at: number, other: number): boolean {
    const before = this.#links[2 * other + PREVIOUS];
    return this.#isFarther(other, at + X, before, before, -1);
  }

  /**
   * Whether the disc with its centre at place `disc` touches a cell's site farther along the boundary, or
   * against it where `sign` is -1, than the disc from which the bisector with a neighbour grows.
   */
  #isFarther(cell: number, disc: number, grows: number, neighbour: number, sign: 1 | -1): boolean {
    const numbers = this.#numbers;
    const x = numbers[cell + SITE_X];
    const y = numbers[cell + SITE_Y];
    const dx = numbers[disc] - x;
    const dy = numbers[disc + 1] - y;
    let endX = numbers[grows + GROWS_X] - x;
    let endY = numbers[grows + GROWS_Y] - y;
    if (this.#links[2 * cell + SITE] < this.#count) {
      const tx = numbers[cell + SITE_TX];
      const ty = numbers[cell + SITE_TY];
      return sign * ((dx - endX) * tx + (dy - endY) * ty) > this.#slack;
    }
    if (numbers[grows + GROWS_R] === 0) {
      // a vertex cell ends at the normal of the vertex's own edge
      endX = -numbers[neighbour + SITE_TY];
      endY = numbers[neighbour + SITE_TX];
    }
    const end = Math.sqrt(endX * endX + endY * endY);
    // directions turn from +y to +x along the boundary
    return sign * (endX * dy - endY * dx) < -this.#slack * end;
  }
}
