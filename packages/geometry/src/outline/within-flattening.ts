import { combineShapes } from '@pourproof/arrangement';
import {
  boundsOf,
  type CleanRegion,
  packRings,
  pollStep,
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
 * @throws {RangeError} when the tolerance is negative or not a number
 */
export function withinFlattening(region: CleanRegion, toleranceMm: number): WithinFlattening {
  const isCurved = curvedEdges(region, toleranceMm);
  if (!isCurved.includes(1)) {
    return { least: region, most: region };
  }
  const chords = { rings: region, isCurved };
  return { least: withoutStrips(chords, toleranceMm), most: withStrips(chords, toleranceMm) };
}

interface Chords {
  readonly rings: Rings;
  readonly isCurved: Uint8Array;
}

/** Margin of a box around rings, in widths of a strip (our choice). */
const BOX_MARGIN = 16;

/** The region without the strips along its inside. */
function withoutStrips(chords: Chords, byMm: number): CleanRegion {
  const { around, strips } = besideChords(chords, byMm);
  const [minX, minY, maxX, maxY] = boundsOf(chords.rings.coords);
  const m = BOX_MARGIN * byMm;
  const box = [minX - m, minY - m, maxX + m, minY - m, maxX + m, maxY + m, minX - m, maxY + m];
  // where two strips overlap the rings wind less than not at all; a box less the rings nowhere does
  const outside = filled([box, ...around.map(reversed)]);
  return combineShapes([filled([box])], [outside, ...strips], 'subtract');
}

/** The region with the strips along its outside. */
function withStrips(chords: Chords, byMm: number): CleanRegion {
  const { around, strips } = besideChords(chords, -byMm);
  return combineShapes([filled(around), ...strips], [], 'union');
}

function filled(rings: readonly number[][]): Region {
  return { ...packRings(rings), fillRule: 'nonzero' };
}

function reversed(ring: readonly number[]): number[] {
  const back: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) {
    back.push(ring[i], ring[i + 1]);
  }
  return back;
}

/** Rings that go round strips, and the strips that none can go round. */
interface BesideChords {
  readonly around: readonly number[][];
  readonly strips: readonly Region[];
}

/**
 * The outline, led round the strip beside each chord: `inMm` to the inside, or to the outside where that is negative. It winds around a point as
 * often as the outline does, and once less for each strip on the inside that holds it, once more for each on the outside: the edges of a strip
 * all sweep the same way as they move to its far side, unless one of them turns round. A strip with such an edge is given by itself.
 */
function besideChords({ rings, isCurved }: Chords, inMm: number): BesideChords {
  const around: number[][] = [];
  const strips: Region[] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const ring = new Ring(rings, k);
    const pieces = runsOf(isCurved, from, rings.ringEnds[k]).flatMap(([first, count]) =>
      piecesOf(ring, first - from, count),
    );
    around.push(ringAround(ring, pieces, inMm, strips));
  }
  return { around, strips };
}

/** A ring led round the strips of its pieces, which come in their order; strips that it cannot go round are added to `strips`. */
function ringAround(ring: Ring, pieces: readonly Piece[], inMm: number, strips: Region[]): number[] {
  const start = pieces.length === 0 ? 0 : pieces[0].from;
  const points: number[] = [];
  let at = start;
  const goTo = (end: number): void => {
    for (; at < end; at++) {
      points.push(...ring.at(at));
    }
  };
  for (const piece of pieces) {
    pollStep();
    goTo(piece.from);
    const far = farSide(ring, piece, inMm);
    if (far === null) {
      strips.push(filled(stripBeside(ring, piece, inMm)));
      goTo(piece.to);
      continue;
    }
    if (piece.isClosed) {
      return far;
    }
    const reach = Math.abs(inMm);
    const [ax, ay] = ring.at(piece.from);
    const [tx, ty] = ring.along(piece.from);
    const [bx, by] = ring.at(piece.to);
    const [ux, uy] = ring.along(piece.to - 1);
    points.push(ax, ay, ax - reach * tx, ay - reach * ty, ...far, bx + reach * ux, by + reach * uy);
    at = piece.to;
  }
  goTo(start + ring.count);
  return points;
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
      runs.push([from + gap + start, k - start]);
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
      pollStep();
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

/** Chords from point `from` to point `to` of a ring, without sharp turns; or a whole ring without any. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly isClosed: boolean;
}

/** The pieces between sharp turns of `count` chords from `first` on. */
function piecesOf(ring: Ring, first: number, count: number): Piece[] {
  const pieces: Piece[] = [];
  const isRing = count === ring.count;
  let start = first;
  for (let i = first + 1; i <= first + count; i++) {
    if (i === first + count || isSharp(ring, i)) {
      const isClosed = isRing && start === first && i === first + count && !isSharp(ring, first);
      pieces.push({ from: start, to: i, isClosed });
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

/**
 * The far side of the strip beside a piece, in the direction of its edges. It reaches as far beyond its ends as it is wide, so that all strips
 * together hold every point within that distance of the chords on this side. `null` where one of its edges runs the other way round.
 */
function farSide(ring: Ring, piece: Piece, inMm: number): number[] | null {
  const points = farPoints(ring, piece, inMm);
  const { from, to, isClosed } = piece;
  const n = points.length;
  for (let i = from; i < to; i++) {
    const p = 2 * (i - from);
    const q = isClosed ? (p + 2) % n : p + 2;
    const [tx, ty] = ring.along(i);
    if (!((points[q] - points[p]) * tx + (points[q + 1] - points[p + 1]) * ty > 0)) {
      return null;
    }
  }
  return points;
}

function farPoints(ring: Ring, { from, to, isClosed }: Piece, inMm: number): number[] {
  const points: number[] = [];
  if (isClosed) {
    for (let i = from; i < to; i++) {
      points.push(...mitred(ring, i, inMm));
    }
    return points;
  }
  const reach = Math.abs(inMm);
  const [ax, ay] = ring.at(from);
  const [tx, ty] = ring.along(from);
  const [bx, by] = ring.at(to);
  const [ux, uy] = ring.along(to - 1);
  points.push(ax - reach * tx - inMm * ty, ay - reach * ty + inMm * tx);
  for (let i = from + 1; i < to; i++) {
    points.push(...mitred(ring, i, inMm));
  }
  points.push(bx + reach * ux - inMm * uy, by + reach * uy + inMm * ux);
  return points;
}

/** The strip beside a piece by itself: along its edges, and back on its far side. */
function stripBeside(ring: Ring, piece: Piece, inMm: number): number[][] {
  const { from, to, isClosed } = piece;
  const own: number[] = [];
  for (let i = from; i < to + (isClosed ? 0 : 1); i++) {
    own.push(...ring.at(i));
  }
  const far = reversed(farPoints(ring, piece, inMm));
  if (isClosed) {
    return [own, far];
  }
  const reach = Math.abs(inMm);
  const [tx, ty] = ring.along(from);
  const [ux, uy] = ring.along(to - 1);
  const n = own.length;
  return [
    [
      own[0] - reach * tx,
      own[1] - reach * ty,
      ...own,
      own[n - 2] + reach * ux,
      own[n - 1] + reach * uy,
      ...far,
    ],
  ];
}

/** The point at which the parallels of two edges meet that meet in point i. */
function mitred(ring: Ring, i: number, inMm: number): [number, number] {
  const [x, y] = ring.at(i);
  const [ax, ay] = ring.along(i + ring.count - 1);
  const [bx, by] = ring.along(i);
  const k = inMm / (1 + ax * bx + ay * by);
  return [x - k * (ay + by), y + k * (ax + bx)];
}
