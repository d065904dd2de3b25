import type { FillRule, Region } from '@pourproof/plane';
import type { PointSink } from '../flatten/point-sink.ts';
import type { CoordArena } from './coord-arena.ts';

/** Numbers in one piece of the writer's store; even, so that a point is never split. */
const PIECE_BITS = 13;
const PIECE = 2 ** PIECE_BITS;

/** What takes the points of rings in order. */
export interface RingSink extends PointSink {
  push(x: number, y: number): void;
  /** Takes the last point off the current ring. */
  pop(): void;
  closeRing(): void;
}

/**
 * Collects the rings of a region, one after the other, in blocks that are reused for the next region: nothing
 * grows by copying, and the region's arrays get their exact size.
 */
export class RingWriter implements RingSink {
  readonly #pieces: Float64Array[] = [new Float64Array(PIECE)];
  readonly #ringEnds: number[] = [];
  #length = 0;
  #ringFrom = 0;
  /** The array of the next region, where its size was announced. */
  #whole: Float64Array | undefined;

  /** Announces the most numbers that the next region can have, so that a large one is written in place. */
  expect(length: number): void {
    this.#whole = new Float64Array(length);
  }

  /** Adds a point to the current ring. */
  push(x: number, y: number): void {
    if (this.#whole !== undefined) {
      this.#whole[this.#length] = x;
      this.#whole[this.#length + 1] = y;
      this.#length += 2;
      return;
    }
    const at = this.#length & (PIECE - 1);
    const index = this.#length >> PIECE_BITS;
    if (index === this.#pieces.length) {
      this.#pieces.push(new Float64Array(PIECE));
    }
    const piece = this.#pieces[index];
    piece[at] = x;
    piece[at + 1] = y;
    this.#length += 2;
  }

  pop(): void {
    this.#length -= 2;
  }

  /**
   * Ends the current ring; points at its end that repeat its start are dropped, and the whole ring when fewer
   * than three points are left.
   */
  closeRing(): void {
    const from = this.#ringFrom;
    const x = this.#at(from);
    const y = this.#at(from + 1);
    while (this.#length > from + 2 && this.#at(this.#length - 2) === x && this.#at(this.#length - 1) === y) {
      this.#length -= 2;
    }
    if (this.#length - from < 6) {
      this.#length = from;
    } else {
      this.#ringEnds.push(this.#length / 2);
    }
    this.#ringFrom = this.#length;
  }

  /** The rings so far as a region with arrays from the arena; the writer is empty again. */
  takeRegion(arena: CoordArena, fillRule: FillRule): Region {
    const coords = this.#whole?.subarray(0, this.#length) ?? this.#joined(arena.coords(this.#length));
    const ringEnds = arena.ringEnds(this.#ringEnds);
    this.#whole = undefined;
    this.#length = 0;
    this.#ringFrom = 0;
    this.#ringEnds.length = 0;
    this.#pieces.length = 1;
    return { coords, ringEnds, fillRule };
  }

  #joined(coords: Float64Array): Float64Array {
    for (let at = 0; at < this.#length; at += PIECE) {
      const piece = this.#pieces[at >> PIECE_BITS];
      coords.set(piece.subarray(0, Math.min(PIECE, this.#length - at)), at);
    }
    return coords;
  }

  #at(i: number): number {
    if (this.#whole !== undefined) {
      return this.#whole[i];
    }
    return this.#pieces[i >> PIECE_BITS][i & (PIECE - 1)];
  }
}
