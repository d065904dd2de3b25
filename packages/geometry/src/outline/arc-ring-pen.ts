import type { ArcRings } from './arc-rings.ts';

/**
 * Builds rings of straight edges and arcs point by point, without points that repeat the one before along a
 * straight edge.
 */
export class ArcRingPen {
  readonly #coords: Float64Array;
  readonly #bulges: Float64Array;
  readonly #ringEnds: number[] = [];
  readonly #closeness: number;
  #first = 0;
  #count = 0;

  /** Room for `capacity` points; points that differ by at most `closeness` in x and y are one. */
  constructor(capacity: number, closeness: number) {
    this.#coords = new Float64Array(2 * capacity);
    this.#bulges = new Float64Array(capacity);
    this.#closeness = closeness;
  }

  /** Adds a point to the ring; the edge that follows is straight unless bent. */
  draw(x: number, y: number): void {
    const at = this.#count;
    if (at > this.#first && this.#bulges[at - 1] === 0 && this.#isAt(at - 1, x, y)) {
      return;
    }
    this.#coords[2 * at] = x;
    this.#coords[2 * at + 1] = y;
    this.#bulges[at] = 0;
    this.#count = at + 1;
  }

  /** Makes the edge that follows the last point an arc. */
  bend(bulge: number): void {
    this.#bulges[this.#count - 1] = bulge;
  }

  /** Closes the ring; whether it was kept, which takes two points. */
  lift(): boolean {
    const first = this.#first;
    let end = this.#count;
    while (
      end - first > 1 &&
      this.#bulges[end - 1] === 0 &&
      this.#isAt(end - 1, this.#coords[2 * first], this.#coords[2 * first + 1])
    ) {
      end--;
    }
    const isRing = end - first > 1;
    this.#count = isRing ? end : first;
    this.#first = this.#count;
    if (isRing) {
      this.#ringEnds.push(end);
    }
    return isRing;
  }

  /** All closed rings. */
  rings(): ArcRings {
    return {
      coords: this.#coords.slice(0, 2 * this.#first),
      bulges: this.#bulges.slice(0, this.#first),
      ringEnds: Uint32Array.from(this.#ringEnds),
    };
  }

  #isAt(at: number, x: number, y: number): boolean {
    return (
      Math.abs(this.#coords[2 * at] - x) <= this.#closeness &&
      Math.abs(this.#coords[2 * at + 1] - y) <= this.#closeness
    );
  }
}
