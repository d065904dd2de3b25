/** Numbers in one chunk: 64 kB of coordinates. */
const CHUNK = 8192;

/** Longer arrays are allocated on their own, so that no chunk wastes more than this at its end. */
const MAX_SHARED_LENGTH = CHUNK / 8;

/** Regions of a single ring with up to this many points share one array of ring ends for each count. */
const MAX_SHARED_POINTS = 4096;

/**
 * Allocates the arrays of regions as views of larger ones: an array of its own costs some 350 bytes beyond
 * its numbers, more than those of a small shape. Arrays are never written to once they are handed out, so
 * equal ones may be shared.
 */
export class CoordArena {
  #coords = new Float64Array(0);
  #coordsUsed = 0;
  #ends = new Uint32Array(0);
  #endsUsed = 0;
  readonly #oneRing = new Map<number, Uint32Array>();

  /** An array for so many numbers, zeroed. */
  coords(length: number): Float64Array {
    if (length > MAX_SHARED_LENGTH) {
      return new Float64Array(length);
    }
    if (this.#coordsUsed + length > this.#coords.length) {
      this.#coords = new Float64Array(CHUNK);
      this.#coordsUsed = 0;
    }
    this.#coordsUsed += length;
    return this.#coords.subarray(this.#coordsUsed - length, this.#coordsUsed);
  }

  /** The ends as an array. */
  ringEnds(ends: readonly number[]): Uint32Array {
    const [only] = ends;
    if (ends.length === 1 && only !== undefined && only <= MAX_SHARED_POINTS) {
      const known = this.#oneRing.get(only) ?? Uint32Array.of(only);
      this.#oneRing.set(only, known);
      return known;
    }
    if (ends.length > MAX_SHARED_LENGTH) {
      return Uint32Array.from(ends);
    }
    if (this.#endsUsed + ends.length > this.#ends.length) {
      this.#ends = new Uint32Array(CHUNK);
      this.#endsUsed = 0;
    }
    this.#endsUsed += ends.length;
    const out = this.#ends.subarray(this.#endsUsed - ends.length, this.#endsUsed);
    out.set(ends);
    return out;
  }
}
