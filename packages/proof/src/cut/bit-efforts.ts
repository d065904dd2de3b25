import { resolveRegions } from '@pourproof/arrangement';
import {
  type Assumption,
  type Carving,
  type ClearingTask,
  COMMON_SHARES,
  type CutterEffort,
  cutterEfforts,
  type FollowingTask,
  type Machine,
  radiusAt,
} from '@pourproof/cutting';
import { type MedialAxis, medialAxis, polygonFromArcs } from '@pourproof/geometry';
import type { Bit } from '@pourproof/job';
import { radians } from '@pourproof/plane';
import { cutterOf } from './cutter-of.ts';
import type { CutJob } from './measure-cut.ts';

/** Path and time of one bit. */
export interface BitEffort {
  /** Length of its moves in the wood in all passes, mm. */
  readonly pathMm: number;
  readonly passes: number;
  readonly retracts: number;
  readonly minutes: number;
  /** Whether they are estimated from area and outline, because there is too much to plan; else absent. */
  readonly isEstimated?: true;
}

/** A value that the times are based on. */
export interface EffortAssumption {
  readonly name: Assumption['name'] | 'stepoverPct' | 'passToDiameterPct' | 'passDepthMm';
  readonly value: number;
  readonly unit: Assumption['unit'] | '%';
  readonly origin: Assumption['origin'];
}

/** Paths and times of all bits, in their order, with what the times are based on. */
export interface Efforts {
  readonly bits: readonly BitEffort[];
  /**
   * Level floor under V bits that no other bit of the job clears, mm²: the times do not include clearing it
   * with the tip.
   */
  readonly leftOutMm2: number;
  readonly assumptions: readonly EffortAssumption[];
}

/**
 * Path and time of every bit of a job: a V follows the artwork's edge; a clearing bit takes what earlier ones
 * left, or the level floor of a V.
 *
 * The stepover of a clearing bit with a round or sloped end is set by the width of its tip; the scallops that
 * a ball leaves between offset loops are not in the cut.
 */
export function bitEfforts(axis: MedialAxis, carving: Carving, job: CutJob): Efforts {
  const hasVee = job.bits.some((bit) => bit.kind === 'vee');
  const axes = { follow: axis, clear: hasVee ? floorAxis(carving, job.toleranceMm) : axis };
  const tasks = job.bits.map((bit, k) => taskOf(bit, carving.perCutter[k]?.depthMm ?? job.depthMm, job));
  // the one place where the machine of a job becomes that of the paths: the paths add what is not given
  const machine: Partial<Machine> = job.machine;
  const efforts = cutterEfforts(axes, tasks, machine);
  return {
    bits: efforts.map(effortOf),
    leftOutMm2: job.bits.every((bit) => bit.kind === 'vee') ? carving.scallopedFloorMm2 : 0,
    assumptions: [...(efforts[0]?.time.assumptions ?? []), ...passAssumptions(job)],
  };
}

function effortOf({ pathMm, passes, minutes, time, isEstimated }: CutterEffort): BitEffort {
  return { pathMm, passes, retracts: time.retracts, minutes, ...(isEstimated ? { isEstimated } : {}) };
}

/** The axis of the level floor that a V leaves. */
function floorAxis(carving: Carving, toleranceMm: number): MedialAxis {
  const floor = polygonFromArcs(carving.sliceOutline(carving.depthLimitMm), toleranceMm);
  return medialAxis(resolveRegions([{ ...floor, fillRule: 'nonzero' }]).region);
}

/** The task of a bit, with passes and stepover of the job or by common practice. */
function taskOf(
  bit: Bit,
  depthMm: number,
  { stepoverPct, passDepthMm }: CutJob,
): ClearingTask | FollowingTask {
  const passes = passDepthMm === null ? {} : { deepestPassMm: passDepthMm };
  if (bit.kind === 'vee') {
    return {
      ...passes,
      way: 'follow',
      diameterMm: bit.diameterMm,
      includedRad: radians(bit.angleDeg),
      tipRadiusMm: bit.tipRadiusMm,
      tipFlatMm: bit.tipMm,
      depthMm,
    };
  }
  return {
    ...passes,
    ...(stepoverPct === null ? {} : { stepoverShare: stepoverPct / 100 }),
    way: 'clear',
    widthMm: 2 * radiusAt(cutterOf(bit), depthMm),
    tipMm: tipWidth(bit),
    depthMm,
  };
}

/** Width of a bit's tip, which sets the stepover, mm. */
function tipWidth(bit: Exclude<Bit, { kind: 'vee' }>): number {
  switch (bit.kind) {
    case 'taper':
      return bit.tipDiameterMm;
    case 'profile':
      return bit.points.find((point) => point.diameterMm > 0)?.diameterMm ?? 0;
    default:
      return bit.diameterMm;
  }
}

/** Stepover and depth of passes, with their origin. */
function passAssumptions({ stepoverPct, passDepthMm }: CutJob): readonly EffortAssumption[] {
  const common = 'common practice';
  return [
    stepoverPct === null
      ? { name: 'stepoverPct', value: 100 * COMMON_SHARES.stepover, unit: '%', origin: common }
      : { name: 'stepoverPct', value: stepoverPct, unit: '%', origin: 'given' },
    passDepthMm === null
      ? { name: 'passToDiameterPct', value: 100 * COMMON_SHARES.pass, unit: '%', origin: common }
      : { name: 'passDepthMm', value: passDepthMm, unit: 'mm', origin: 'given' },
  ];
}
