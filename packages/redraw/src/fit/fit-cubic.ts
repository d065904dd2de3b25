import { offCubic } from './off-cubic.ts';
import type { XY } from './outline-path.ts';
import type { Polyline } from './polyline.ts';

/** A cubic Bézier by its inner control points, and how far it lies from what it stands for at most. */
export interface FittedCubic {
  readonly control: readonly [XY, XY];
  readonly offMm: number;
}

/** Lengths of the first handle that are tried, in chords: geometric steps, between which roots are sought by halving. */
const FIRST_HANDLE = 0.02;
const LAST_HANDLE = 4;
const HANDLE_STEPS = 28;
const HALVINGS = 40;

/**
 * The cubic Bézier from point i to point j of a run with the given unit tangents there that has the run's area and first moment, where there is
 * one: of those the nearest, `null` where it leaves `toleranceMm`.
 *
 * A cubic with fixed ends and tangents has two lengths left to choose. One follows from the other by the area; those that give
 * the moment as well are found by halving. Such a fit is nearer by two orders than one through points (R. Levien, "Fitting cubic Bézier curves",
 * 2021), and outlines made of them keep their area.
 */
export function fitCubic(
  run: Polyline,
  [i, j]: readonly [number, number],
  [t0, t1]: readonly [XY, XY],
  toleranceMm: number,
): FittedCubic | null {
  const [ax, ay] = run.at(i);
  const [bx, by] = run.at(j);
  const [dx, dy] = [bx - ax, by - ay];
  const chord = Math.hypot(dx, dy);
  if (!(chord > 0)) {
    return null;
  }
  const [ux, uy] = [dx / chord, dy / chord];
  const form = new ChordForm(
    [t0[0] * ux + t0[1] * uy, t0[1] * ux - t0[0] * uy],
    [t1[0] * ux + t1[1] * uy, t1[1] * ux - t1[0] * uy],
    run.underChord(i, j),
  );
  let best: FittedCubic | null = null;
  for (const [a, b] of form.handles()) {
    const control: [XY, XY] = [
      [ax + a * chord * t0[0], ay + a * chord * t0[1]],
      [bx - b * chord * t1[0], by - b * chord * t1[1]],
    ];
    const offMm = offCubic(run, [i, j], control, Math.min(toleranceMm, best?.offMm ?? Infinity));
    if (offMm <= toleranceMm && (best === null || offMm < best.offMm)) {
      best = { control, offMm };
    }
  }
  return best;
}

/**
 * A chord from point i to the next bent so that it begins and ends along the given unit tangents, where no curve of the run's area does: its
 * area is off by less than a tenth of its square times the turn. `null` where it leaves `toleranceMm`.
 */
export function bentChord(
  run: Polyline,
  i: number,
  [[ux, uy], [vx, vy]]: readonly [XY, XY],
  toleranceMm: number,
): FittedCubic | null {
  const [[ax, ay], [bx, by]] = [run.at(i), run.at(i + 1)];
  const third = Math.hypot(bx - ax, by - ay) / 3;
  const control: [XY, XY] = [
    [ax + third * ux, ay + third * uy],
    [bx - third * vx, by - third * vy],
  ];
  const offMm = offCubic(run, [i, i + 1], control, toleranceMm);
  return offMm <= toleranceMm ? { control, offMm } : null;
}

/** A cubic from 0, 0 to 1, 0 with fixed directions at its ends. */
class ChordForm {
  readonly #c0: number;
  readonly #s0: number;
  readonly #c1: number;
  readonly #s1: number;
  readonly #area: number;
  readonly #moment: number;

  constructor(
    [c0, s0]: XY,
    [c1, s1]: XY,
    { area, moment }: { readonly area: number; readonly moment: number },
  ) {
    this.#c0 = c0;
    this.#s0 = s0;
    this.#c1 = c1;
    this.#s1 = s1;
    this.#area = area;
    this.#moment = moment;
  }

  /** Pairs of handles with the right area and moment, and the pair with the right area whose first is a third of the chord. */
  handles(): readonly (readonly [number, number])[] {
    const found: [number, number][] = [];
    const step = (LAST_HANDLE / FIRST_HANDLE) ** (1 / HANDLE_STEPS);
    let before = this.#misfit(FIRST_HANDLE);
    for (let k = 1, a = FIRST_HANDLE; k <= HANDLE_STEPS; k++, a *= step) {
      const after = this.#misfit(a * step);
      if (before * after <= 0) {
        const root = this.#root(a, a * step, before);
        const b = this.#secondHandle(root);
        if (isHandle(b)) {
          found.push([root, b]);
        }
      }
      before = after;
    }
    const b = this.#secondHandle(1 / 3);
    return isHandle(b) ? [...found, [1 / 3, b]] : found;
  }

  #root(low: number, high: number, atLow: number): number {
    let [from, to] = [low, high];
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (from + to) / 2;
      if (this.#misfit(middle) * atLow > 0) {
        from = middle;
      } else {
        to = middle;
      }
    }
    return (from + to) / 2;
  }

  /** Length of the second handle with which the area is right: area = 3/20·(2b·s1 − 2a·s0 + ab·(s0·c1 − c0·s1)). */
  #secondHandle(a: number): number {
    const twist = this.#s0 * this.#c1 - this.#c0 * this.#s1;
    return ((20 / 3) * this.#area + 2 * a * this.#s0) / (2 * this.#s1 + a * twist);
  }

  /** How far the moment is off with a first handle; NaN where no second one fits. */
  #misfit(a: number): number {
    const b = this.#secondHandle(a);
    if (!isHandle(b)) {
      return Number.NaN;
    }
    const [x1, y1, x2, y2] = [a * this.#c0, a * this.#s0, 1 - b * this.#c1, -b * this.#s1];
    let sum = 0;
    for (let g = 0; g < GAUSS.length; g += 2) {
      const t = GAUSS[g];
      const s = 1 - t;
      const [b1, b2, b3] = [3 * s * s * t, 3 * s * t * t, t * t * t];
      const [d1, d2, d3] = [3 * s * (s - 2 * t), 3 * t * (2 * s - t), 3 * t * t];
      const [x, y] = [b1 * x1 + b2 * x2 + b3, b1 * y1 + b2 * y2];
      sum += GAUSS[g + 1] * x * (x * (d1 * y1 + d2 * y2) - y * (d1 * x1 + d2 * x2 + d3));
    }
    return sum / 3 - this.#moment;
  }
}

function isHandle(length: number): boolean {
  return length > 0.01 && length < 2 * LAST_HANDLE;
}

/** Nodes and weights of Gauss and Legendre on 0 … 1 with five points, exact up to degree nine: the moment has degree eight. */
const GAUSS: readonly number[] = (() => {
  const [inner, outer] = [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3];
  const [near, far] = [(322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900];
  return [
    [-outer, far],
    [-inner, near],
    [0, 128 / 225],
    [inner, near],
    [outer, far],
  ].flatMap(([node, weight]) => [(1 + node) / 2, weight / 2]);
})();
