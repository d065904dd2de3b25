import {
  type Assumption,
  type Carving,
  COMMON_SHARES,
  type CutterPath,
  type CuttingTime,
  clearingPath,
  cuttingTime,
  equalPasses,
  followingPath,
  inPasses,
  type MedialAxis,
  medialAxis,
  polygonFromArcs,
  radiusAt,
  resolveRegions,
} from '@pourproof/geometry';
import { radians } from '@pourproof/plane';
import type { Bit, VeeBit } from '../job/bit.ts';
import type { Job } from '../job/job.ts';
import { cutterOf } from './cutter-of.ts';

/** How far a bit has to go and how long that takes. */
export interface BitEffort {
  /** Length of its moves in the wood over all passes, mm. */
  readonly pathMm: number;
  readonly passes: number;
  readonly lifts: number;
  readonly minutes: number;
}

/** A number that the times rest on. */
export interface EffortAssumption {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly origin: Assumption['origin'];
}

/** The work of all bits, in their order, with what the times rest on. */
export interface Efforts {
  readonly bits: readonly BitEffort[];
  /** Level floor under V bits that no other bit of the job clears, mm²: going over it with the tip is in no time. */
  readonly leftOutMm2: number;
  readonly assumptions: readonly EffortAssumption[];
}

/**
 * Path and time of every bit of a job: a V follows the artwork's edge, a clearing bit takes what wider ones before it left, or the level floor of a V.
 *
 * A clearing bit with a round or sloped end takes its rounds by the width of its tip; the ridges that a ball leaves between rounds are not in the cut.
 */
export function bitEfforts(axis: MedialAxis, carving: Carving, job: Job): Efforts {
  const hasVee = job.bits.some((bit) => bit.kind === 'vee');
  const area = hasVee ? floorAxis(carving, job.toleranceMm) : axis;
  let narrowest = Number.POSITIVE_INFINITY;
  const times = job.bits.map((bit, k) => {
    const depthMm = carving.perCutter[k]?.depthMm ?? job.depthMm;
    if (bit.kind === 'vee') {
      const path = veePath(axis, bit, depthMm);
      const depths = equalPasses(greatestDepth(path), passDepth(bit.diameterMm, job));
      return effortOf(inPasses(path, depths), depths.length, job);
    }
    const widthMm = 2 * radiusAt(cutterOf(bit), depthMm);
    const path = clearing(area, { widthMm, tipMm: tipWidth(bit), depthMm, earlierMm: narrowest }, job);
    narrowest = Math.min(narrowest, widthMm);
    return effortOf(path, equalPasses(depthMm, passDepth(widthMm, job)).length, job);
  });
  return {
    bits: times.map(({ effort }) => effort),
    leftOutMm2: job.bits.every((bit) => bit.kind === 'vee') ? carving.scallopedFloorMm2 : 0,
    assumptions: [...(times[0]?.time.assumptions ?? []), ...assumedWays(job)],
  };
}

/** The axis of the level floor that a V leaves. */
function floorAxis(carving: Carving, toleranceMm: number): MedialAxis {
  const floor = polygonFromArcs(carving.sliceOutline(carving.maxDepthMm), toleranceMm);
  return medialAxis(resolveRegions([{ ...floor, fillRule: 'nonzero' }]).region);
}

function veePath(axis: MedialAxis, bit: VeeBit, depthMm: number): CutterPath {
  return followingPath(axis, {
    includedRad: radians(bit.angleDeg),
    tipRadiusMm: bit.tipRadiusMm,
    tipFlatMm: bit.tipMm,
    depthMm,
  }).path;
}

function clearing(
  axis: MedialAxis,
  bit: { widthMm: number; tipMm: number; depthMm: number; earlierMm: number },
  job: Job,
): CutterPath {
  const { widthMm, tipMm, depthMm, earlierMm } = bit;
  const share = job.stepoverPct === null ? COMMON_SHARES.stepover : job.stepoverPct / 100;
  const stepoverMm = share * Math.min(tipMm, widthMm);
  return clearingPath(axis, {
    diameterMm: widthMm,
    stepoverMm,
    depthMm,
    deepestPassMm: passDepth(widthMm, job),
    ...(earlierMm === Number.POSITIVE_INFINITY ? {} : { earlierDiameterMm: earlierMm }),
  });
}

/** Width of a bit's tip, which sets the distance between rounds. */
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

/** How close rounds lie and how deep passes go. */
function assumedWays({ stepoverPct, passDepthMm }: Job): readonly EffortAssumption[] {
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

function passDepth(widthMm: number, job: Job): number {
  return job.passDepthMm ?? COMMON_SHARES.pass * widthMm;
}

function effortOf(
  path: CutterPath,
  passes: number,
  job: Job,
): { readonly effort: BitEffort; readonly time: CuttingTime } {
  const time = cuttingTime(path, job.machine);
  return {
    effort: {
      pathMm: time.cutMm,
      passes: path.runEnds.length === 0 ? 0 : passes,
      lifts: time.lifts,
      minutes: time.minutes,
    },
    time,
  };
}

/** A V stays above its limit where no stroke is wide enough. */
function greatestDepth({ points }: CutterPath): number {
  let most = 0;
  for (let i = 2; i < points.length; i += 3) {
    most = Math.max(most, points[i] as number);
  }
  return most;
}
