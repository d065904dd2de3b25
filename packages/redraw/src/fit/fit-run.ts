import { type FittedArc, fitArc } from './fit-arc.ts';
import { bentChord, fitCubic } from './fit-cubic.ts';
import type { OutlinePiece, XY } from './outline-path.ts';
import { direction, type Polyline } from './polyline.ts';

/** How near curves are to come. */
export interface FitTolerance {
  /** The farthest that chords lie from the curves that were drawn, mm. */
  readonly chordMm: number;
  /** The farthest that fitted curves may lie from the chords, mm. */
  readonly fitMm: number;
}

/** Tangents at the ends of a run; `null` at a corner, where nothing binds them. */
export type EndTangents = readonly [XY | null, XY | null];

/** What a run became, and how far from it that lies at most. */
export interface FittedRun {
  readonly pieces: readonly OutlinePiece[];
  readonly offMm: number;
}

/** An arc within a run is told from other curves only where it turns by this much, radians (our choice). */
const LEAST_ARC_TURN = Math.PI / 3;

/** Points within this many chord heights of an arc were drawn as that arc: chords weave about it. */
const ARC_HEIGHTS = 1.5;

/** An arc within a run has at least so many chords: its turn and any radius above 0.1 mm give as many. */
const ARC_CHORDS = 4;

/** Two tangents that differ by less go on into each other, radians: 0.3°, far below what shows or is felt (our choice). */
const SMOOTH_RAD = 0.005;

/** Few chords may have no curve of their area where more have one: so many are tried before a search ends. */
const PATIENCE = 12;

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly arc: FittedArc | null;
}

/** Arcs and cubic Béziers along a run of chords, each tangent to the next. */
export function fitRun(run: Polyline, ends: EndTangents, tolerance: FitTolerance): FittedRun {
  // a chord by itself is no curve, but where it goes on from straight sides
  return run.count === 2 && (ends[0] === null || ends[1] === null)
    ? { pieces: [{ kind: 'line', to: run.at(1) }], offMm: 0 }
    : new RunFitter(run, ends, tolerance).fit();
}

class RunFitter {
  readonly #run: Polyline;
  readonly #ends: EndTangents;
  readonly #tolerance: FitTolerance;
  readonly #pieces: OutlinePiece[] = [];
  #off = 0;

  constructor(run: Polyline, ends: EndTangents, tolerance: FitTolerance) {
    this.#run = run;
    this.#ends = ends;
    this.#tolerance = tolerance;
  }

  fit(): FittedRun {
    const stretches = this.#stretches();
    stretches.forEach(({ from, to, arc }, k) => {
      if (arc === null) {
        const before = stretches[k - 1]?.arc?.tangents[1] ?? this.#tangent(from);
        const after = stretches[k + 1]?.arc?.tangents[0] ?? this.#tangent(to);
        this.#takeCubics([from, to], [before, after]);
      } else {
        this.#off = Math.max(this.#off, arc.offMm);
        this.#pieces.push({ kind: 'arc', to: this.#run.at(to), bulge: arc.bulge });
      }
    });
    return { pieces: this.#pieces, offMm: this.#off };
  }

  /** The run in arcs and what lies between them. */
  #stretches(): readonly Stretch[] {
    const last = this.#run.count - 1;
    const whole = this.#arc(0, last);
    if (whole !== null) {
      return [{ from: 0, to: last, arc: whole }];
    }
    const stretches: Stretch[] = [];
    let done = 0;
    for (let i = 0; i < last; ) {
      // where the first few chords lie on no arc, none begins
      const isBegun = i + ARC_CHORDS <= last && this.#arc(i, i + ARC_CHORDS) !== null;
      const to = isBegun ? this.#farthest(i, last, (j) => this.#arc(i, j) !== null, ARC_CHORDS) : i;
      const arc = to > i && this.#run.turnBetween(i, to) >= LEAST_ARC_TURN ? this.#arc(i, to) : null;
      if (arc === null) {
        i++;
        continue;
      }
      if (i > done) {
        stretches.push({ from: done, to: i, arc: null });
      }
      stretches.push({ from: i, to, arc });
      done = to;
      i = to;
    }
    return done < last ? [...stretches, { from: done, to: last, arc: null }] : stretches;
  }

  /** The arc along a stretch, if it goes on smoothly where the run's ends are bound. */
  #arc(i: number, j: number): FittedArc | null {
    const arc = fitArc(this.#run, [i, j], ARC_HEIGHTS * this.#tolerance.chordMm);
    const isBound = (place: number): XY | null =>
      place === 0
        ? this.#ends[0]
        : place === this.#run.count - 1
          ? this.#ends[1]
          : this.#run.tangentAt(place);
    const isSmooth = (tangent: XY, bound: XY | null): boolean =>
      bound === null || angle(tangent, bound) <= SMOOTH_RAD;
    return arc !== null && isSmooth(arc.tangents[0], isBound(i)) && isSmooth(arc.tangents[1], isBound(j))
      ? arc
      : null;
  }

  #tangent(place: number): XY {
    const run = this.#run;
    if (place === 0) {
      return this.#ends[0] ?? run.endTangent(1);
    }
    if (place === run.count - 1) {
      const [x, y] = run.endTangent(-1);
      return this.#ends[1] ?? [-x, -y];
    }
    return run.tangentAt(place);
  }

  /** Cubics along a stretch, each as long as it holds the tolerance. */
  #takeCubics([first, last]: readonly [number, number], [start, end]: readonly [XY, XY]): void {
    let tangent = start;
    for (let i = first; i < last; ) {
      const own = tangent;
      const endAt = (j: number): XY => (j === last ? end : this.#run.tangentAt(j));
      const fit = (j: number): ReturnType<typeof fitCubic> =>
        fitCubic(this.#run, [i, j], [own, endAt(j)], this.#tolerance.fitMm);
      const to = fit(last) === null ? this.#farthest(i, last, (j) => fit(j) !== null, 2) : last;
      const next = to > i ? to : i + 1;
      const cubic = to > i ? fit(to) : bentChord(this.#run, i, [own, endAt(next)], this.#tolerance.fitMm);
      if (cubic === null) {
        this.#pieces.push({ kind: 'line', to: this.#run.at(next) });
        tangent = direction(this.#run.at(i), this.#run.at(next));
      } else {
        this.#off = Math.max(this.#off, cubic.offMm);
        this.#pieces.push({ kind: 'cubic', to: this.#run.at(next), control: cubic.control });
        tangent = endAt(next);
      }
      i = next;
    }
  }

  /** The farthest point up to `last` for which a test holds, sought by doubling and halving from `least` points on; i where it never does. */
  #farthest(i: number, last: number, holds: (j: number) => boolean, least: number): number {
    let good = i;
    let step = least;
    for (; i + step < last; step *= 2) {
      if (holds(i + step)) {
        good = i + step;
      } else if (step >= PATIENCE) {
        break;
      }
    }
    let bad = Math.min(i + step, last + 1);
    while (bad - good > 1) {
      const middle = (good + bad) >> 1;
      if (middle - i >= least && holds(middle)) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return good;
  }
}

/** Angle between two unit vectors, radians. */
function angle([ax, ay]: XY, [bx, by]: XY): number {
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}
