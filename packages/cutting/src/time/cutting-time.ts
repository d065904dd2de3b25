import type { CutterPath } from '../paths/cutter-path.ts';
import { type Assumption, assumedMachine, type Machine } from './machine.ts';
import { moveSeconds, runSeconds } from './run-seconds.ts';

const SECONDS = 60;

/** How long a path takes, and how far each kind of way is. */
export interface CuttingTime {
  readonly cutMinutes: number;
  readonly plungeMinutes: number;
  readonly rapidMinutes: number;
  /** All three together. */
  readonly minutes: number;
  readonly cutMm: number;
  readonly plungeMm: number;
  readonly rapidMm: number;
  /** How often the cutter is lifted off the wood: once after each run. */
  readonly retracts: number;
  readonly assumptions: readonly Assumption[];
}

/**
 * Time to cut a path, from rest above its first run to rest above its last. Each run: down at the plunge
 * speed from the travel height to the first point, along the run at the feed, up at the rapid speed, straight
 * over to the next run at the travel height. Every stop is a full one between runs; corners within a run are
 * passed as `runSeconds` says. Changing bits, spinning up and dust stops are not counted. 0 for a path
 * without runs.
 *
 * @param given values of the machine that are known; `SMALL_ROUTER`'s stand in for the others and are named
 * in `assumptions`
 * @throws {RangeError} when a value of the machine is out of range
 */
export function cuttingTime(path: CutterPath, given: Partial<Machine> = {}): CuttingTime {
  const { machine, assumptions } = assumedMachine(given);
  const { points, runEnds } = path;
  const a = machine.accelerationMmPerS2;
  const plunge = machine.plungeMmPerMin / SECONDS;
  const rapid = machine.rapidMmPerMin / SECONDS;
  const seconds = { cut: 0, plunge: 0, rapid: 0 };
  const mm = { cut: 0, plunge: 0, rapid: 0 };
  for (let k = 0; k < runEnds.length; k++) {
    const from = k === 0 ? 0 : runEnds[k - 1];
    const last = runEnds[k] - 1;
    if (k > 0) {
      const over = Math.hypot(
        points[3 * from] - points[3 * from - 3],
        points[3 * from + 1] - points[3 * from - 2],
      );
      mm.rapid += over;
      seconds.rapid += moveSeconds(over, 0, 0, rapid, a);
    }
    const down = machine.retractMm + points[3 * from + 2];
    const up = machine.retractMm + points[3 * last + 2];
    const run = runSeconds(path, from, runEnds[k], machine);
    mm.plunge += down + run.downMm;
    seconds.plunge += moveSeconds(down, 0, 0, plunge, a) + run.downSeconds;
    mm.rapid += up;
    seconds.rapid += moveSeconds(up, 0, 0, rapid, a);
    mm.cut += run.cutMm;
    seconds.cut += run.cutSeconds;
  }
  return {
    cutMinutes: seconds.cut / SECONDS,
    plungeMinutes: seconds.plunge / SECONDS,
    rapidMinutes: seconds.rapid / SECONDS,
    minutes: (seconds.cut + seconds.plunge + seconds.rapid) / SECONDS,
    cutMm: mm.cut,
    plungeMm: mm.plunge,
    rapidMm: mm.rapid,
    retracts: runEnds.length,
    assumptions,
  };
}
