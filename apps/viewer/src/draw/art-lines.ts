import type { Bounds } from '@pourproof/plane';
import type { ArtShape } from './art-shapes.ts';
import { thinnedLine } from './thinned-line.ts';

/** How far a thinned line may lie from the true one, px (our choice: less than smoothed edges show). */
const TOLERANCE_PX = 0.25;
/** Scales of which thinned lines are kept, each twice the next: the one that is shown and one to either side (our choice). */
const MAX_LEVELS = 3;

/** The lines of one shape, thinned to the scale at which they are shown, and found by the part of the plane that is in sight. */
export class ArtLines {
  readonly shape: ArtShape;
  /** Left, top, right and bottom of each line. */
  readonly #boxes: Float32Array;
  /** Thinned lines by scale, each made when it first comes in sight. */
  readonly #levels: Map<number, (Float32Array | undefined)[]> = new Map();

  constructor(shape: ArtShape) {
    this.shape = shape;
    this.#boxes = new Float32Array(4 * shape.ends.length);
    for (let k = 0; k < shape.ends.length; k++) {
      this.#boxes.set(boxOf(this.#line(k)), 4 * k);
    }
  }

  /** Number of scales of which lines are kept. */
  get levelCount(): number {
    return this.#levels.size;
  }

  /**
   * Calls back for each line whose box meets a window, thinned to a quarter of a pixel.
   *
   * @param pxPerMm device pixels a millimetre
   */
  inSight(
    [left, top, right, bottom]: Bounds,
    pxPerMm: number,
    draw: (line: Float32Array, isClosed: boolean) => void,
  ): void {
    const level = Math.ceil(Math.log2(pxPerMm));
    const thinned = this.#thinnedAt(level);
    const boxes = this.#boxes;
    for (let k = 0; k < this.shape.ends.length; k++) {
      const isSeen =
        (boxes[4 * k] as number) <= right &&
        (boxes[4 * k + 1] as number) <= bottom &&
        (boxes[4 * k + 2] as number) >= left &&
        (boxes[4 * k + 3] as number) >= top;
      if (isSeen) {
        thinned[k] ??= thinnedLine(this.#line(k), TOLERANCE_PX / 2 ** level);
        draw(thinned[k] as Float32Array, k >= this.shape.openCount);
      }
    }
  }

  #thinnedAt(level: number): (Float32Array | undefined)[] {
    const known = this.#levels.get(level);
    if (known !== undefined) {
      return known;
    }
    const made: (Float32Array | undefined)[] = [];
    this.#levels.set(level, made);
    if (this.#levels.size > MAX_LEVELS) {
      const farthest = [...this.#levels.keys()].toSorted(
        (a, b) => Math.abs(b - level) - Math.abs(a - level),
      )[0] as number;
      this.#levels.delete(farthest);
    }
    return made;
  }

  #line(k: number): Float32Array {
    const { coords, ends } = this.shape;
    return coords.subarray(k === 0 ? 0 : 2 * (ends[k - 1] as number), 2 * (ends[k] as number));
  }
}

function boxOf(line: Float32Array): Bounds {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < line.length; i += 2) {
    const [x, y] = [line[i] as number, line[i + 1] as number];
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return [left, top, right, bottom];
}
