import { bitSize } from './bit.ts';
import type { Job } from './job.ts';
import { JobError } from './job-error.ts';

/**
 * Refuses a settled job whose values contradict the world: depths below 0, dives beyond upright.
 *
 * @throws {JobError} for the first value that makes no sense
 */
export function refuseNonsense(job: Job): void {
  const rules: readonly (readonly [bad: boolean, message: string])[] = [
    [!(job.depthMm > 0), `depth is ${job.depthMm} mm; a pocket needs a depth above 0, such as 1/8in or 3mm.`],
    [job.depthMm > 100, `depth is ${job.depthMm} mm, deeper than any board here (100 mm). Check its unit.`],
    [
      job.board !== null && job.depthMm >= job.board.thicknessMm,
      `depth is ${bitSize(job.depthMm, job.units)}, but the board is only ${bitSize(job.board?.thicknessMm ?? 0, job.units)} thick.`,
    ],
    [job.marginMm < 0, `margin is ${job.marginMm} mm; it can't be below 0.`],
    [job.diveDeg < 0 || job.diveDeg > 90, `dive is ${job.diveDeg}°; it lies between 0deg and 90deg.`],
    [job.levelMm < 0, `level is ${job.levelMm} mm; it can't be below 0.`],
    [job.overpourMm < 0, `overpour is ${job.overpourMm} mm; it can't be below 0.`],
    [job.sealHours < 0, `sealHours is ${job.sealHours} h; it can't be below 0.`],
    [!isWhole(job.coats, 0, 10), `coats is ${job.coats}; it must be a whole number from 0 to 10.`],
    [!isWhole(job.boards, 1, 1000), `boards is ${job.boards}; it must be a whole number from 1 to 1000.`],
    [
      !(job.toleranceMm >= 1e-4 && job.toleranceMm <= 0.5),
      `tolerance is ${job.toleranceMm} mm; it lies between 0.0001mm and 0.5mm.`,
    ],
    [!(job.wastePct >= 0 && job.wastePct <= 100), `wastePct is ${job.wastePct}; it lies between 0 and 100.`],
    [
      !(job.pigmentPct >= 0 && job.pigmentPct <= 20),
      `pigmentPct is ${job.pigmentPct}; it lies between 0 and 20: more would spoil the cure.`,
    ],
    [
      !(job.shopTempC >= 5 && job.shopTempC <= 45),
      `shopTemp is ${job.shopTempC} °C; epoxy is not poured below 5C or above 45C. Check its unit.`,
    ],
    [
      job.pricePerG !== null && !(job.pricePerG >= 0 && Number.isFinite(job.pricePerG)),
      `pricePerG is ${job.pricePerG}; it can't be below 0.`,
    ],
  ];
  for (const [bad, message] of rules) {
    if (bad) {
      throw new JobError(message);
    }
  }
  for (const [name, value] of Object.entries({ ...job.machine, passDepthMm: job.passDepthMm ?? 1 })) {
    if (!(value > 0)) {
      throw new JobError(`${name} is ${value}; it must be above 0.`);
    }
  }
}

function isWhole(value: number, least: number, most: number): boolean {
  return Number.isInteger(value) && value >= least && value <= most;
}
