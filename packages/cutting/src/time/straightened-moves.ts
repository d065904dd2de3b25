import { DEFAULT_FLATTEN_TOLERANCE_MM, pollStep } from '@pourproof/plane';
import { type CutterPath, moveLength } from '../paths/cutter-path.ts';

/**
 * Moves that together stay within this of a straight line are planned as one, mm: anything finer than the
 * flattening of the artwork is an artefact of it.
 */
const STRAIGHT_TOL_MM = DEFAULT_FLATTEN_TOLERANCE_MM;

/** Points nearer to each other across than this lie on one vertical but for rounding, mm. */
const ROUNDING_MM = 1e-9;

/** A planned move. */
export interface PlannedMove {
  /** Length of the moves that it stands for, mm. */
  readonly length: number;
  /** Depth gained from start to end, mm. */
  readonly down: number;
  /** Unit directions at its start and end. */
  readonly start: readonly [number, number, number];
  readonly end: readonly [number, number, number];
  /** Radius of an arc, mm; Infinity for a straight move. */
  readonly radius: number;
  /** Whether it is a vertical plunge. */
  readonly isDown: boolean;
}

/**
 * The moves of the run between points `from` and `to` (excluded), nearly collinear ones merged; none of
 * length 0.
 */
export function straightenedMoves(path: CutterPath, from: number, to: number): PlannedMove[] {
  const moves: PlannedMove[] = [];
  let i = from;
  while (i + 1 < to) {
    pollStep();
    const j = isBent(path, i) ? i + 1 : farthestStraight(path, i, to - 1);
    let length = 0;
    for (let k = i; k < j; k++) {
      length += moveLength(path, k);
    }
    if (length > 0) {
      moves.push(moveBetween(path, i, j, length));
    }
    i = j;
  }
  return moves;
}

/** Whether move i is an arc that bulges too far to count as straight. */
function isBent({ points, bulges }: CutterPath, i: number): boolean {
  if (bulges[i] === 0) {
    return false;
  }
  const chord = Math.hypot(points[3 * i + 3] - points[3 * i], points[3 * i + 4] - points[3 * i + 1]);
  return (Math.abs(bulges[i]) * chord) / 2 > STRAIGHT_TOL_MM;
}

/**
 * The last point up to which all moves from point i are nearly collinear, found by doubling and then halving
 * the step.
 */
function farthestStraight(path: CutterPath, i: number, last: number): number {
  let good = i + 1;
  let step = 1;
  while (good + step <= last && isStraight(path, i, good + step)) {
    good += step;
    step *= 2;
  }
  for (step = Math.floor(step / 2); step > 0; step = Math.floor(step / 2)) {
    if (good + step <= last && isStraight(path, i, good + step)) {
      good += step;
    }
  }
  return good;
}

/** Whether move i leads straight down, but for rounding. */
function isPlunge({ points }: CutterPath, i: number): boolean {
  const dz = points[3 * i + 5] - points[3 * i + 2];
  if (!(dz > ROUNDING_MM)) {
    return false;
  }
  return Math.hypot(points[3 * i + 3] - points[3 * i], points[3 * i + 4] - points[3 * i + 1]) <= ROUNDING_MM;
}

/**
 * Whether all moves from point i to point j lead forward and stay close to the line between both. A plunge, which has a feed of its own, is
 * one with plunges only: a move too short to see beside it does not make a cut of it.
 */
function isStraight(path: CutterPath, i: number, j: number): boolean {
  const { points } = path;
  const [dx, dy, dz] = between(points, i, j);
  const length = Math.hypot(dx, dy, dz);
  if (length === 0) {
    return false;
  }
  const isDown = isPlunge(path, i);
  let reached = 0;
  for (let k = i; k < j; k++) {
    pollStep();
    if (isBent(path, k) || isPlunge(path, k) !== isDown) {
      return false;
    }
    const ux = points[3 * k + 3] - points[3 * i];
    const uy = points[3 * k + 4] - points[3 * i + 1];
    const uz = points[3 * k + 5] - points[3 * i + 2];
    const along = (ux * dx + uy * dy + uz * dz) / length;
    const ox = ux - (along / length) * dx;
    const oy = uy - (along / length) * dy;
    const oz = uz - (along / length) * dz;
    // the length itself would take as long as all the rest
    const squared = ox * ox + oy * oy + oz * oz;
    if (squared > STRAIGHT_TOL_MM * STRAIGHT_TOL_MM || along < reached - STRAIGHT_TOL_MM) {
      return false;
    }
    reached = Math.max(reached, along);
  }
  return true;
}

function between(points: Float64Array, i: number, j: number): [number, number, number] {
  return [
    points[3 * j] - points[3 * i],
    points[3 * j + 1] - points[3 * i + 1],
    points[3 * j + 2] - points[3 * i + 2],
  ];
}

function moveBetween(path: CutterPath, i: number, j: number, length: number): PlannedMove {
  const [dx, dy, down] = between(path.points, i, j);
  const chord = Math.hypot(dx, dy);
  const isDown = chord <= ROUNDING_MM && down > ROUNDING_MM;
  const bulge = j === i + 1 && isBent(path, i) ? path.bulges[i] : 0;
  if (bulge === 0) {
    const direct = Math.hypot(chord, down);
    const direction = [dx / direct, dy / direct, down / direct] as const;
    return { length, down, start: direction, end: direction, radius: Infinity, isDown };
  }
  // an arc's tangents differ from its chord by half its turn, to opposite sides at start and end
  const half = 2 * Math.atan(bulge);
  const slope = down / length;
  const flat = Math.sqrt(Math.max(0, 1 - slope * slope)) / chord;
  const turned = (by: number): readonly [number, number, number] => [
    (dx * Math.cos(by) - dy * Math.sin(by)) * flat,
    (dx * Math.sin(by) + dy * Math.cos(by)) * flat,
    slope,
  ];
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { length, down, start: turned(-half), end: turned(half), radius, isDown };
}
