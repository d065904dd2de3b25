import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { EdgeCells, type VertexCell } from '../cells/edge-cells.ts';
import { type EdgePart, edgeParts } from '../cells/edge-parts.ts';
import { radiusAt } from '../cutters/cutter.ts';
import { type ProfileChord, profileChords } from '../cutters/profile-chords.ts';
import type { FollowingProfile } from '../following/following-profile.ts';
import { RoundedTipCut } from '../following/rounded-tip-cut.ts';
import { StraightFlankCut } from '../following/straight-flank-cut.ts';
import { adaptiveIntegral } from '../integrals/adaptive-integral.ts';
import { cellMoments, zerosBetween } from './cell-moments.ts';
import { addTipWalls, type TipBand } from './tip-walls.ts';
import type { WallCollector } from './wall-collector.ts';

/** Tolerance of the integral over an element, relative to its area: rounding. */
const ELEMENT_REL_TOL = 1e-11;
/** Chords for the arc of a rounded tip, each with its own lean. */
const CHORDS_PER_TIP = 4;
/** Intervals at whose ends a sign is compared, and bisection steps for a change within one: to rounding. */
const SIGN_SAMPLES = 8;
const SIGN_BISECTIONS = 50;

/**
 * Adds the sloped walls that a following cutter leaves, from the contacts' own normals: for each axis edge
 * and each chord of the profile, a plane element in a segment cell and a part of a cone in a vertex cell.
 */
export function addFollowingWalls(
  walls: WallCollector,
  axis: MedialAxis,
  cut: StraightFlankCut | RoundedTipCut,
  { depthsMm, longestMm }: TipBand,
): void {
  const { profile } = cut;
  const all = profileChords(profile.cutter, profile.depthMm, CHORDS_PER_TIP);
  const isStraight = cut instanceof StraightFlankCut;
  // what a flat tip leaves along the axis is added apart
  const chords = cutChords(isStraight ? all.filter((chord) => chord.toHeightMm > 0) : all, longestMm).map(
    (chord) => kinked(chord, profile, depthsMm),
  );
  if (isStraight && profile.tipFlatMm > 0) {
    addTipWalls(walls, axis, profile, { depthsMm, longestMm });
  }
  const edge = new AxisEdge(axis);
  const cells = new EdgeCells(axis, edge);
  for (let e = 0; e < axis.edgeFrom.length; e++) {
    pollStep();
    if (edge.isSecondary(e)) {
      continue;
    }
    edge.load(e);
    const centre =
      cut instanceof RoundedTipCut ? cut.centreFor(e) : (h: number) => Math.min(h, profile.reachMm);
    for (const part of edgeParts(edge, 0, longestMm)) {
      pollStep();
      const cellPart = new CellPart(axis, edge, cells, { profile, centre, depthsMm, part, isStraight });
      for (const chord of chords) {
        cellPart.add(walls, chord);
      }
    }
  }
}

/** A chord with the clearances at which the surface that it leaves begins, ends or has a kink, in rising order. */
interface KinkedChord extends ProfileChord {
  readonly kinks: readonly number[];
}

function kinked(
  chord: ProfileChord,
  { cutter, reachMm }: FollowingProfile,
  depthsMm: readonly number[],
): KinkedChord {
  // with straight flanks the surface ends at a depth where the clearance equals the radius there
  const depths = depthsMm.map((depth) => radiusAt(cutter, depth));
  const kinks = [chord.fromRadiusMm, chord.toRadiusMm, reachMm, ...depths].sort((p, q) => p - q);
  return { ...chord, kinks };
}

/** The chords; those wider than `longestMm` divided equally. */
function cutChords(chords: readonly ProfileChord[], longestMm: number): ProfileChord[] {
  return chords.flatMap((chord) => {
    const { fromRadiusMm, toRadiusMm, fromHeightMm, toHeightMm } = chord;
    const count = Math.max(1, Math.ceil((toRadiusMm - fromRadiusMm) / longestMm));
    const at = (k: number): { readonly radius: number; readonly height: number } => ({
      radius: fromRadiusMm + ((toRadiusMm - fromRadiusMm) * k) / count,
      height: fromHeightMm + ((toHeightMm - fromHeightMm) * k) / count,
    });
    return Array.from({ length: count }, (_, k) => ({
      ...chord,
      fromRadiusMm: at(k).radius,
      fromHeightMm: at(k).height,
      toRadiusMm: at(k + 1).radius,
      toHeightMm: at(k + 1).height,
    }));
  });
}

/**
 * Where f changes its sign, to rounding. Two changes within an eighth of the interval may be missed: f is
 * close to 0 between them.
 */
function signChanges(f: (t: number) => number, from: number, to: number): number[] {
  const changes: number[] = [];
  const step = (to - from) / SIGN_SAMPLES;
  for (let k = 0; k < SIGN_SAMPLES; k++) {
    let low = from + k * step;
    let high = low + step;
    const isPositive = f(low) > 0;
    if (isPositive !== f(high) > 0) {
      for (let halving = 0; halving < SIGN_BISECTIONS; halving++) {
        const middle = (low + high) / 2;
        if (f(middle) > 0 === isPositive) {
          low = middle;
        } else {
          high = middle;
        }
      }
      changes.push(low);
    }
  }
  return changes;
}

interface PartSetting {
  readonly depthsMm: readonly [topMm: number, bottomMm: number];
  readonly profile: FollowingProfile;
  /** Clearance that the cutter uses, as a function of that at the contact. */
  readonly centre: (clearance: number) => number;
  readonly part: EdgePart;
  /** Whether the distances between which a chord leaves the surface are linear in the clearance between its kinks. */
  readonly isStraight: boolean;
}

/** The walls in the two cells beside a part of an axis edge. */
class CellPart {
  readonly #axis: MedialAxis;
  readonly #cells: EdgeCells;
  readonly #profile: FollowingProfile;
  readonly #depthsMm: readonly [number, number];
  readonly #centre: (clearance: number) => number;
  readonly #left: number;
  readonly #right: number;
  readonly #isLines: boolean;
  readonly #part: EdgePart;
  readonly #isStraight: boolean;

  constructor(
    axis: MedialAxis,
    edge: AxisEdge,
    cells: EdgeCells,
    { profile, centre, depthsMm, part, isStraight }: PartSetting,
  ) {
    this.#axis = axis;
    this.#cells = cells;
    this.#profile = profile;
    this.#centre = centre;
    this.#depthsMm = depthsMm;
    this.#left = edge.left;
    this.#right = edge.right;
    this.#isLines = edge.kind === 'segments';
    this.#part = part;
    this.#isStraight = isStraight;
  }

  add(walls: WallCollector, chord: KinkedChord): void {
    const { count, tx, ty, originX, originY } = this.#axis.boundary;
    const lean = chord.leanRad;
    const steepness = 1 / Math.sin(lean);
    const { from: a, to: b, share, x: px, y: py, clearance } = this.#part;
    const back = clearance - this.#middle(chord);
    const segment = (h: number): number => this.#width(chord, h);
    const { kinks } = chord;
    const width = this.#isStraight
      ? this.#cells.linearIntegral(a, b, segment, kinks)
      : this.#cells.integral(
          a,
          b,
          { segment, vertex: () => 0, kinks },
          ELEMENT_REL_TOL * this.#profile.reachMm * Math.abs(this.#cells.spans(a, b).lengthMm),
        );
    for (let side = 0; side < 2; side++) {
      const site = side === 0 ? this.#left : this.#right;
      if (site < count) {
        const [mx, my] = [px + back * ty[site], py - back * tx[site]];
        const area = width * share * steepness * (this.#isLines ? 0.5 : 1);
        walls.flat(originX + mx, originY + my, ty[site], -tx[site], lean, area);
      }
    }
    if (this.#isLines) {
      return;
    }
    const cells = this.#stretches(chord, a, b).map(([low, high]) => this.#cells.vertexCells(low, high));
    for (let k = 0; k < cells[0].length; k++) {
      this.#addVertexCell(
        walls,
        chord,
        cells.map((stretch) => stretch[k]),
      );
    }
  }

  /**
   * Distance from the wall to the middle of what a chord of the profile leaves, at the middle of the part.
   */
  #middle(chord: ProfileChord): number {
    const [near, far] = this.#span(chord, this.#part.clearance);
    return far > near ? (near + far) / 2 : this.#part.clearance / 2;
  }

  /** Intervals of clearance from a to b between kinks. */
  #stretches(chord: KinkedChord, a: number, b: number): [number, number][] {
    const stops = [a, ...chord.kinks.filter((kink) => kink > a && kink < b), b];
    return stops.slice(1).map((to, k) => [stops[k], to]);
  }

  #addVertexCell(walls: WallCollector, chord: ProfileChord, stretches: readonly VertexCell[]): void {
    const { count, x, y, originX, originY } = this.#axis.boundary;
    const lean = chord.leanRad;
    let area = 0;
    let exposedMm2 = 0;
    for (const cell of stretches) {
      if (this.#isStraight) {
        const exact = this.#exactCell(walls, chord, cell);
        area += exact.areaMm2;
        exposedMm2 += exact.exposedMm2;
        continue;
      }
      const plan = (t: number): number => this.#planPerRad(chord, cell.clearanceAt(t));
      const exposed = (t: number): number => {
        const [wx, wy] = cell.directionAt(t);
        return plan(t) * walls.exposure(-wx, -wy, lean);
      };
      const [low, high] = cell.from < cell.to ? [cell.from, cell.to] : [cell.to, cell.from];
      const steepness = (cell.from < cell.to ? cell.sign : -cell.sign) / Math.sin(lean);
      const tolerance = ELEMENT_REL_TOL * Math.max(plan(low), plan(high)) * (high - low);
      area += steepness * adaptiveIntegral(plan, low, high, tolerance).value;
      // |n·f| has a kink where the fibre lies in the wall
      const along = (t: number): number => {
        const [wx, wy] = cell.directionAt(t);
        return walls.along(-wx, -wy, lean);
      };
      const stops = [low, ...signChanges(along, low, high), high];
      for (let k = 0; k + 1 < stops.length; k++) {
        exposedMm2 += steepness * adaptiveIntegral(exposed, stops[k], stops[k + 1], tolerance).value;
      }
    }
    const [first, last] = [stretches[0], stretches[stretches.length - 1]];
    const [wx, wy] = first.directionAt((first.from + last.to) / 2);
    const p = first.site - count;
    const far = this.#middle(chord) / this.#part.clearance;
    const [mx, my] = [x[p] + far * (this.#part.x - x[p]), y[p] + far * (this.#part.y - y[p])];
    walls.known(originX + mx, originY + my, -wx, -wy, lean, area, exposedMm2);
  }

  /** The part of a cone between two kinks, in closed form: half the difference of two squares, both linear in the clearance. */
  #exactCell(
    walls: WallCollector,
    chord: ProfileChord,
    cell: VertexCell,
  ): { readonly areaMm2: number; readonly exposedMm2: number } {
    const [low, high] = cell.from < cell.to ? [cell.from, cell.to] : [cell.to, cell.from];
    const [a, b] = [cell.clearanceAt(low), cell.clearanceAt(high)];
    const middle = (a + b) / 2;
    const [near, far] = this.#span(chord, middle);
    if (!(far > near)) {
      return { areaMm2: 0, exposedMm2: 0 };
    }
    const [nearBefore, farBefore] = this.#span(chord, (a + middle) / 2);
    const step = (middle - a) / 2;
    // a wall's foot and head stay where they are or move with the cutter's centre
    const moves = (now: number, before: number): number =>
      Math.abs(now - before) > Math.abs(step) / 2 ? 1 : 0;
    const [n1, f1] = [moves(near, nearBefore), moves(far, farBefore)];
    const [n0, f0] = [near - n1 * middle, far - f1 * middle];
    const plan = [(f0 * f0 - n0 * n0) / 2, f0 * f1 - n0 * n1, (f1 - n1) / 2] as const;
    const sum = (m: readonly [number, number, number]): number =>
      plan[0] * m[0] + plan[1] * m[1] + plan[2] * m[2];
    const [ex, ey] = cell.directionAt(0);
    const [dx, dy] = cell.directionAt(Math.PI / 2);
    const lean = chord.leanRad;
    const r = walls.along(0, 0, lean);
    const p = walls.along(-ex, -ey, lean) - r;
    const q = walls.along(-dx, -dy, lean) - r;
    const stops = [low, ...zerosBetween(p, q, r, low, high), high];
    let area = 0;
    let exposed = 0;
    for (let k = 0; k + 1 < stops.length; k++) {
      const { plain, cosine, sine } = cellMoments(cell, stops[k], stops[k + 1]);
      area += sum(plain);
      // |n·f| has a kink where the fibre lies in the wall
      exposed += Math.abs(p * sum(cosine) + q * sum(sine) + r * sum(plain));
    }
    const steepness = (cell.from < cell.to ? cell.sign : -cell.sign) / Math.sin(lean);
    return { areaMm2: steepness * area, exposedMm2: steepness * exposed };
  }

  /** Width, seen from above, of what a chord of the profile leaves beside a straight wall. */
  #width(chord: ProfileChord, clearance: number): number {
    const [near, far] = this.#span(chord, clearance);
    return Math.max(0, far - near);
  }

  /** The same around a reflex vertex, mm² per radian. */
  #planPerRad(chord: ProfileChord, clearance: number): number {
    const [near, far] = this.#span(chord, clearance);
    return far > near ? (far * far - near * near) / 2 : 0;
  }

  #span(chord: ProfileChord, clearance: number): readonly [number, number] {
    return this.#profile.chordSpan(chord, clearance, this.#centre(clearance), this.#depthsMm);
  }
}
