import type { CutterPath } from '../paths/cutter-path.ts';
import { type Assumption, assumedMachine, type Machine } from './machine.ts';
import { moveSeconds, runSeconds, SECONDS_PER_MINUTE } from './run-seconds.ts';

/** Time and length of a path, by kind of move. */
export interface CuttingTime {
  readonly cutMinutes: number;
  readonly plungeMinutes: number;
  readonly rapidMinutes: number;
  /** The sum of the three. */
  readonly minutes: number;
  readonly cutMm: number;
  readonly plungeMm: number;
  readonly rapidMm: number;
  /** Number of retracts: one after each run. */
  readonly retracts: number;
  readonly assumptions: readonly Assumption[];
}

/**
 * Time to cut a path, from rest above its first run to rest above its last one. For each run: plunge from the
 * retract height, cut at the feed, retract at the rapid speed, and a rapid move to the next run, with full
 * stops between them; corners within a run are passed as junction deviation and acceleration allow. Changing
 * bits, spinning up and pauses are not counted. 0 for a path without runs.
 *
 * @param given known values of the machine; those of {@link SMALL_ROUTER} stand in for the rest, and
 * `assumptions` lists all
 * @throws {RangeError} when a value of the machine is out of range
 */
export function cuttingTime(path: CutterPath, given: Partial<Machine> = {}): CuttingTime {
  const { machine, assumptions } = assumedMachine(given);
  const { points, runEnds } = path;
  const a = machine.accelerationMmPerS2;
  const plunge = machine.plungeMmPerMin / SECONDS_PER_MINUTE;
  const rapid = machine.rapidMmPerMin / SECONDS_PER_MINUTE;
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
    cutMinutes: seconds.cut / SECONDS_PER_MINUTE,
    plungeMinutes: seconds.plunge / SECONDS_PER_MINUTE,
    rapidMinutes: seconds.rapid / SECONDS_PER_MINUTE,
    minutes: (seconds.cut + seconds.plunge + seconds.rapid) / SECONDS_PER_MINUTE,
    cutMm: mm.cut,
    plungeMm: mm.plunge,
    rapidMm: mm.rapid,
    retracts: runEnds.length,
    assumptions,
  };
}
