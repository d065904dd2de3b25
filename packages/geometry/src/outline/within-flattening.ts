import { combineShapes } from '@pourproof/arrangement';
import {
  type CleanRegion,
  goOn,
  type Poll,
  packRings,
  type Region,
  type Rings,
  ringStart,
} from '@pourproof/plane';
import { curvedEdges } from './curved-edges.ts';

/** Two regions between which a drawn one lies. */
export interface WithinFlattening {
  /** Lies in the drawn region. */
  readonly least: CleanRegion;
  /** Contains it. */
  readonly most: CleanRegion;
}

/** Where the outline turns by more, the strip beside it is squared off instead of mitred: cosine of 60°. */
const MITRE_COS = 0.5;

/**
 * What curves may have enclosed of which a region holds the chords: the region without the strip of `toleranceMm` along its inside beside
 * every chord, and with the one along its outside. Straight edges stay where they are, to the bit; a region without chords is both.
 *
 * Each point of a curve lies within the tolerance of its chord, and its ends lie on it. So a point that changes sides, when the chords are
 * bent back into the curves, lies in the strip of one of them, and whatever the drawn region is, it contains `least` and lies in `most`.
 *
 * @param poll asked as it goes on
 * @throws {RangeError} when the tolerance is negative or not a number
 */
export function withinFlattening(
  region: CleanRegion,
  toleranceMm: number,
  poll: Poll = goOn,
): WithinFlattening {
  const isCurved = curvedEdges(region, toleranceMm);
  if (!isCurved.includes(1)) {
    return { least: region, most: region };
  }
  const shape: Region = { ...region, fillRule: 'nonzero' };
  const chords = { rings: region, isCurved };
  return {
    least: combineShapes([shape], [stripAlong(chords, toleranceMm)], 'subtract', poll),
    most: combineShapes([shape, stripAlong(chords, -toleranceMm)], [], 'union', poll),
  };
}

interface Chords {
  readonly rings: Rings;
  readonly isCurved: Uint8Array;
}

/** The strip along all chords: `inMm` to the inside, or to the outside where that is negative. */
function stripAlong({ rings, isCurved }: Chords, inMm: number): Region {
  const pieces: number[][] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const ring = new Ring(rings, k);
    for (const [first, count] of runsOf(isCurved, from, rings.ringEnds[k])) {
      pieces.push(...stripBeside(ring, first - from, count, inMm));
    }
  }
  return { ...packRings(pieces), fillRule: 'nonzero' };
}

/** Runs of chords on the ring `from` … `to`: index of the first edge and number of edges. A whole ring begins anywhere. */
function runsOf(isCurved: Uint8Array, from: number, to: number): [number, number][] {
  const n = to - from;
  const gap = isCurved.subarray(from, to).indexOf(0);
  if (gap < 0) {
    return [[from, n]];
  }
  const runs: [number, number][] = [];
  for (let k = 1, start = -1; k <= n; k++) {
    const isChord = isCurved[from + ((gap + k) % n)] !== 0;
    if (isChord && start < 0) {
      start = k;
    } else if (!isChord && start >= 0) {
      runs.push([from + ((gap + start) % n), k - start]);
      start = -1;
    }
  }
  return runs;
}

/** One ring with the direction of each edge; indices go round. */
class Ring {
  readonly #rings: Rings;
  readonly #from: number;
  /** Unit direction of the edge from each point, `[x, y, …]`. */
  readonly #along: Float64Array;
  readonly count: number;

  constructor(rings: Rings, k: number) {
    const { coords, ringEnds } = rings;
    this.#rings = rings;
    this.#from = ringStart(rings, k);
    this.count = ringEnds[k] - this.#from;
    this.#along = new Float64Array(2 * this.count);
    for (let i = 0; i < this.count; i++) {
      const a = 2 * (this.#from + i);
      const b = 2 * (this.#from + ((i + 1) % this.count));
      const dx = coords[b] - coords[a];
      const dy = coords[b + 1] - coords[a + 1];
      const d = Math.sqrt(dx * dx + dy * dy);
      this.#along[2 * i] = dx / d;
      this.#along[2 * i + 1] = dy / d;
    }
  }

  at(i: number): [number, number] {
    const p = this.#from + (i % this.count);
    return [this.#rings.coords[2 * p], this.#rings.coords[2 * p + 1]];
  }

  /** Unit direction of the edge from point i. */
  along(i: number): [number, number] {
    const p = i % this.count;
    return [this.#along[2 * p], this.#along[2 * p + 1]];
  }
}

/**
 * The strip beside `count` edges from `first` on, one piece between two sharp turns. Each piece reaches as far beyond its ends as it is wide,
 * so that together they hold every point within that distance of the edges on this side.
 */
function stripBeside(ring: Ring, first: number, count: number, inMm: number): number[][] {
  const pieces: number[][] = [];
  const isRing = count === ring.count;
  let start = first;
  for (let i = first + 1; i <= first + count; i++) {
    if (i === first + count || isSharp(ring, i)) {
      const isClosed = isRing && start === first && i === first + count && !isSharp(ring, first);
      pieces.push(...(isClosed ? closedStrip(ring, first, inMm) : [openStrip(ring, start, i, inMm)]));
      start = i;
    }
  }
  return pieces;
}

function isSharp(ring: Ring, i: number): boolean {
  const [ax, ay] = ring.along(i + ring.count - 1);
  const [bx, by] = ring.along(i);
  return ax * bx + ay * by < MITRE_COS;
}

/** Beside a whole ring without sharp turns: the ring, and its parallel the other way round. */
function closedStrip(ring: Ring, first: number, inMm: number): number[][] {
  const own: number[] = [];
  const beside: number[] = [];
  for (let k = 0; k < ring.count; k++) {
    own.push(...ring.at(first + k));
    beside.push(...mitred(ring, first + ring.count - 1 - k, inMm));
  }
  return [own, beside];
}

function openStrip(ring: Ring, from: number, to: number, inMm: number): number[] {
  const reach = Math.abs(inMm);
  const [ax, ay] = ring.at(from);
  const [tx, ty] = ring.along(from);
  const [bx, by] = ring.at(to);
  const [ux, uy] = ring.along(to - 1);
  const points = [ax - reach * tx, ay - reach * ty];
  for (let i = from; i <= to; i++) {
    points.push(...ring.at(i));
  }
  points.push(bx + reach * ux, by + reach * uy);
  points.push(bx + reach * ux - inMm * uy, by + reach * uy + inMm * ux);
  for (let i = to - 1; i > from; i--) {
    points.push(...mitred(ring, i, inMm));
  }
  points.push(ax - reach * tx - inMm * ty, ay - reach * ty + inMm * tx);
  return points;
}

/** The point at which the parallels of two edges meet that meet in point i. */
function mitred(ring: Ring, i: number, inMm: number): [number, number] {
  const [x, y] = ring.at(i);
  const [ax, ay] = ring.along(i + ring.count - 1);
  const [bx, by] = ring.along(i);
  const k = inMm / (1 + ax * bx + ay * by);
  return [x - k * (ay + by), y + k * (ax + bx)];
}
