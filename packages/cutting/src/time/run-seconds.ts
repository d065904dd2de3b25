import { pollStep } from '@pourproof/plane';
import type { CutterPath } from '../paths/cutter-path.ts';
import type { Machine } from './machine.ts';
import { type PlannedMove, straightenedMoves } from './straightened-moves.ts';

export const SECONDS_PER_MINUTE = 60;

/** Time and length of one run from rest to rest, vertical plunges apart. */
export interface RunTime {
  readonly cutSeconds: number;
  readonly cutMm: number;
  readonly downSeconds: number;
  readonly downMm: number;
}

/**
 * Time of the run between points `from` and `to` (excluded) of a path on a machine that looks ahead:
 * trapezoidal speed on each move, between speeds at its ends that the corners set. A corner at which the
 * moves enclose the angle θ (π: straight on) is passed at v² = a·δ·sin(θ/2) / (1 − sin(θ/2)): on the circle
 * that touches both moves and comes within the junction deviation δ of the corner, the acceleration is a. On
 * an arc of radius ρ, v² ≤ a·ρ; in a row of short moves for an arc too, with half the sum of the lengths of
 * two moves over their turn φ for ρ.
 */
export function runSeconds(path: CutterPath, from: number, to: number, machine: Machine): RunTime {
  const moves = straightenedMoves(path, from, to);
  const speeds = moves.map((move) => topSpeed(move, machine));
  const a = machine.accelerationMmPerS2;
  const square = jointSpeeds(moves, speeds, machine);
  let [cutSeconds, cutMm, downSeconds, downMm] = [0, 0, 0, 0];
  moves.forEach(({ length, isDown }, k) => {
    const seconds = moveSeconds(length, Math.sqrt(square[k]), Math.sqrt(square[k + 1]), speeds[k], a);
    if (isDown) {
      downSeconds += seconds;
      downMm += length;
    } else {
      cutSeconds += seconds;
      cutMm += length;
    }
  });
  return { cutSeconds, cutMm, downSeconds, downMm };
}

/**
 * Seconds for a straight move of a length from speed v0 to v1, never above `speed`, with the acceleration
 * `a`; v0 and v1 must be within reach of each other.
 */
export function moveSeconds(length: number, v0: number, v1: number, speed: number, a: number): number {
  if (length === 0) {
    return 0;
  }
  const peak = Math.min(speed, Math.sqrt((2 * a * length + v0 * v0 + v1 * v1) / 2));
  const level = length - (2 * peak * peak - v0 * v0 - v1 * v1) / (2 * a);
  return (2 * peak - v0 - v1) / a + Math.max(0, level) / peak;
}

/** Greatest speed on a move, mm per second. */
function topSpeed({ length, down, radius }: PlannedMove, machine: Machine): number {
  const feed = machine.feedMmPerMin / SECONDS_PER_MINUTE;
  const plunge = machine.plungeMmPerMin / SECONDS_PER_MINUTE;
  return Math.min(
    feed,
    down > 0 ? (plunge * length) / down : Infinity,
    Math.sqrt(machine.accelerationMmPerS2 * radius),
  );
}

/** Squared speeds before, between and after the moves: 0 at both ends, and within reach from either side. */
function jointSpeeds(
  moves: readonly PlannedMove[],
  speeds: readonly number[],
  machine: Machine,
): Float64Array {
  const a = machine.accelerationMmPerS2;
  const count = moves.length;
  const square = new Float64Array(count + 1);
  for (let k = 1; k < count; k++) {
    pollStep();
    const limit = Math.min(speeds[k - 1], speeds[k]) ** 2;
    square[k] = Math.min(
      limit,
      cornerSpeedSquared(moves[k - 1], moves[k], machine),
      square[k - 1] + 2 * a * moves[k - 1].length,
    );
  }
  for (let k = count - 1; k > 0; k--) {
    pollStep();
    square[k] = Math.min(square[k], square[k + 1] + 2 * a * moves[k].length);
  }
  return square;
}

function cornerSpeedSquared(before: PlannedMove, after: PlannedMove, machine: Machine): number {
  const [u, v] = [before.end, after.start];
  const dot = u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
  const cross = Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]);
  const turn = Math.atan2(cross, dot);
  // sin(θ/2) = cos(turn/2), and 1 − cos(turn/2) in the form that keeps the digits of small turns
  const rest = 2 * Math.sin(turn / 4) ** 2;
  const radius = Math.min(
    (machine.junctionDeviationMm * Math.max(0, Math.cos(turn / 2))) / rest,
    (before.length + after.length) / (2 * turn),
  );
  return turn > 0 ? machine.accelerationMmPerS2 * radius : Infinity;
}
