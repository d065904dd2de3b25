import { BoxIndex, pollStep } from '@pourproof/plane';
import { neighbouringDiscs } from './neighbouring-discs.ts';

/** So few centres are looked at one by one. */
const FEW = 16;
/** What may be rounding, as a share of a distance. */
const REL_TOL = 1e-12;

/** Centres of discs of one radius, found by place. */
export class NearCentres {
  readonly #x: readonly number[];
  readonly #y: readonly number[];
  /** Both only where centres are many. */
  readonly #index: BoxIndex | null = null;
  readonly #neighbours: readonly number[][] = [];

  /** Centre k lies at `(x[k], y[k])`, mm. */
  constructor(x: readonly number[], y: readonly number[]) {
    this.#x = x;
    this.#y = y;
    if (x.length > FEW) {
      this.#index = new BoxIndex(Float64Array.from(x.flatMap((px, k) => [px, y[k], px, y[k]])));
      this.#neighbours = neighbouringDiscs(x, y);
    }
  }

  /**
   * The centre nearest to a point; -1 for none. Boxes lead to one near by, and from there nearer neighbours of Delaunay's triangulation to the
   * nearest: boxes alone would have to be opened wherever centres are nearly as near as the nearest, which may be everywhere along a curve.
   */
  nearest(px: number, py: number): number {
    if (this.#index === null) {
      let best = -1;
      let least = Infinity;
      for (let k = 0; k < this.#x.length; k++) {
        const distance = this.distance(k, px, py);
        best = distance < least ? k : best;
        least = Math.min(least, distance);
      }
      return best;
    }
    const [first] = this.within(px, py, Infinity, 1);
    let best = first;
    let least = this.distance(first, px, py);
    for (let at = -1; at !== best; ) {
      pollStep();
      at = best;
      for (const k of this.#neighbours[at]) {
        const distance = this.distance(k, px, py);
        best = distance < least ? k : best;
        least = Math.min(least, distance);
      }
    }
    return best;
  }

  /** Centres no farther from a point than `reach`, mm, at most so many of them; all, where they are few. */
  within(px: number, py: number, reach: number, most: number): number[] {
    const some: number[] = [];
    if (this.#index === null) {
      for (let k = 0; k < this.#x.length; k++) {
        some.push(k);
      }
      return some;
    }
    const far = reach * (1 + REL_TOL);
    this.#index.visitNear(
      px,
      py,
      (distance) => distance <= far && some.length < most,
      (k) => {
        some.push(k);
      },
    );
    return some;
  }

  /** Distance from a point to a centre, mm. */
  distance(centre: number, px: number, py: number): number {
    const dx = px - this.#x[centre];
    const dy = py - this.#y[centre];
    return Math.sqrt(dx * dx + dy * dy);
  }
}
