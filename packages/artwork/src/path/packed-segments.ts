import type { EllipseArc } from '../flatten/flatten-ellipse-arc.ts';
import type { Segment, Segments } from './path.ts';

/** How many numbers each kind of segment takes; it starts where the one before ends. */
const LINE = 2;
const CUBIC = 6;
const ARC = 10;

/**
 * Segments in two flat lists of numbers, turned into objects on demand: a path of a million segments takes a
 * tenth of the memory of its objects.
 */
export class PackedSegments implements Segments {
  /** Count of numbers of each segment, which tells its kind. */
  readonly #kinds: number[] = [];
  /** The numbers of all segments, the end point last in each. */
  readonly #values: number[] = [];
  readonly #x0: number;
  readonly #y0: number;

  constructor(x0: number, y0: number) {
    this.#x0 = x0;
    this.#y0 = y0;
  }

  get length(): number {
    return this.#kinds.length;
  }

  addLine(x: number, y: number): void {
    this.#kinds.push(LINE);
    this.#values.push(x, y);
  }

  addCubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.#kinds.push(CUBIC);
    this.#values.push(x1, y1, x2, y2, x, y);
  }

  addArc(a: EllipseArc, x: number, y: number): void {
    this.#kinds.push(ARC);
    this.#values.push(a.cx, a.cy, a.ux, a.uy, a.vx, a.vy, a.start, a.end, x, y);
  }

  first(): Segment | undefined {
    return this.length === 0 ? undefined : this.#make(0, 0);
  }

  last(): Segment | undefined {
    const i = this.length - 1;
    return i < 0 ? undefined : this.#make(i, this.#values.length - this.#kinds[i]);
  }

  forEach(visit: (segment: Segment, index: number) => void): void {
    let at = 0;
    for (let i = 0; i < this.#kinds.length; i++) {
      visit(this.#make(i, at), i);
      at += this.#kinds[i];
    }
  }

  *[Symbol.iterator](): Iterator<Segment> {
    let at = 0;
    for (let i = 0; i < this.#kinds.length; i++) {
      yield this.#make(i, at);
      at += this.#kinds[i];
    }
  }

  #make(i: number, at: number): Segment {
    const v = this.#values;
    const x0 = at === 0 ? this.#x0 : v[at - 2];
    const y0 = at === 0 ? this.#y0 : v[at - 1];
    const n = (i: number): number => v[at + i];
    if (this.#kinds[i] === LINE) {
      return { kind: 'line', x0, y0, x: n(0), y: n(1) };
    }
    if (this.#kinds[i] === CUBIC) {
      return { kind: 'cubic', x0, y0, x1: n(0), y1: n(1), x2: n(2), y2: n(3), x: n(4), y: n(5) };
    }
    const arc = {
      cx: n(0),
      cy: n(1),
      ux: n(2),
      uy: n(3),
      vx: n(4),
      vy: n(5),
      start: n(6),
      end: n(7),
    };
    return { kind: 'arc', x0, y0, arc, x: n(8), y: n(9) };
  }
}
