import {
  type Resin,
  type Sealer,
  type ShopWait,
  type ShopWaitId,
  type SourceId,
  shopHours,
} from '@pourproof/materials';

/** Steps of the work, in the order in which they begin. */
export type StepId =
  | 'carve'
  | 'clean'
  | 'seal-coat'
  | 'bond-window'
  | 'pour'
  | 'next-layer'
  | 'top-up'
  | 'level'
  | 'finish'
  | 'full-cure';

/**
 * One step: the earliest time at which it may begin, and the latest by the rules. Hours from the start of
 * carving.
 */
export interface ScheduleStep {
  readonly step: StepId;
  /** 1, 2, … if a step is done several times, else 0. */
  readonly turn: number;
  /** Round of the work, from 1; absent where there is one only. */
  readonly round?: number;
  readonly earliestHours: number;
  /**
   * End of the window, or the more cautious of rules that differ; equals `earliestHours` if there is one time
   * only.
   */
  readonly latestHours: number;
  /**
   * Whether missing the end of the window costs sanding; otherwise the end is only the more cautious rule.
   */
  readonly isWindow: boolean;
  readonly because: readonly SourceId[];
}

/** What the times depend on. */
export interface ScheduleJob {
  /** Cutting time for all boards, minutes. */
  readonly cuttingMinutes: number;
  readonly seal: Sealer;
  readonly coats: number;
  /** Hours from the last coat to the pour, as the maker plans. */
  readonly sealHours: number;
  readonly resin: Resin;
  readonly layers: number;
  readonly temperatureC: number;
}

/** Hours to brush out, vacuum and mask a carved board (our estimate, shown as such). */
const CLEAN_HOURS = 0.5;
/** Hours to set up before the first cut (our estimate, shown as such). */
const SET_UP_HOURS = 0.5;
/** Least hours to set up and carve (our estimate, shown as such). */
const MIN_CARVE_HOURS = 1;
const QUARTERS_PER_HOUR = 4;
const MIN_PER_HOUR = 60;
/** Hours from levelling to the finish, for fine sanding and dusting off (our estimate). */
export const FINISH_AFTER_HOURS = 1;

/**
 * The steps of a job, in hours from the start of carving, at the shop's temperature.
 *
 * The pour comes after the maker's own wait; if that is shorter than what the seal needs, both times are
 * given. Rules that differ become a range from the earliest to the most cautious, and later steps follow from
 * both ends. Steps that do not occur are absent. Nothing here replaces a data sheet.
 */
export function planSchedule(job: ScheduleJob): readonly ScheduleStep[] {
  const waits = new Map<ShopWaitId, ShopWait>(shopHours(shopJob(job)).map((wait) => [wait.wait, wait]));
  const carved = carveHours(job.cuttingMinutes);
  const steps: ScheduleStep[] = [
    at('carve', 0, 0, 0, ['common-practice']),
    at('clean', 0, carved, carved, ['common-practice']),
  ];
  const isSealed = job.coats > 0 && job.seal.curve.value.length > 0;
  const ready = carved + CLEAN_HOURS;
  const pour = isSealed ? sealSteps(job, ready, waits, steps) : atOnce(ready);
  steps.push({
    ...at(
      'pour',
      job.layers > 1 ? 1 : 0,
      pour.fromHours,
      pour.untilHours,
      waits.get(pour.isWindow ? 'seal-bonds-unsanded' : 'seal-cure')?.because ?? ['common-practice'],
    ),
    isWindow: pour.isWindow,
  });
  afterPour(job, [pour.fromHours, pour.lateHours], waits, steps);
  return steps.toSorted((a, b) => a.earliestHours - b.earliestHours);
}

/** Hours to set up and cut, rounded up to quarters, at least one. */
function carveHours(cuttingMinutes: number): number {
  const hours = SET_UP_HOURS + cuttingMinutes / MIN_PER_HOUR;
  return Math.max(MIN_CARVE_HOURS, Math.ceil(hours * QUARTERS_PER_HOUR) / QUARTERS_PER_HOUR);
}

function shopJob({ seal, coats, resin, temperatureC }: ScheduleJob): Parameters<typeof shopHours>[0] {
  return { seal, coats: seal.curve.value.length > 0 ? coats : 0, resin, temperatureC };
}

/** When the pour may be, hours from the start. */
interface PourTime {
  readonly fromHours: number;
  /** End of its window, counted from the earliest coat, or what the most cautious rules give. */
  readonly untilHours: number;
  readonly isWindow: boolean;
  /** The latest pour that later steps follow from: after the most cautious waits. */
  readonly lateHours: number;
}

function atOnce(hours: number): PourTime {
  return { fromHours: hours, untilHours: hours, isWindow: false, lateHours: hours };
}

/** Adds the coats; returns the time of the pour. A window counts from the earliest coat, so that whoever keeps it is in time. */
function sealSteps(
  job: ScheduleJob,
  ready: number,
  waits: ReadonlyMap<ShopWaitId, ShopWait>,
  steps: ScheduleStep[],
): PourTime {
  const between = waits.get('between-seal-coats');
  let early = ready;
  let late = ready;
  for (let coat = 1; coat <= job.coats; coat++) {
    const isWindow = coat > 1 && job.seal.tackyHours !== null;
    let until = late;
    if (coat > 1 && between) {
      until = isWindow ? early + between.latestHours : late + between.latestHours;
      early += between.earliestHours;
      late += between.latestHours;
    }
    steps.push({
      ...at('seal-coat', job.coats > 1 ? coat : 0, early, until, between?.because ?? ['common-practice']),
      isWindow,
    });
  }
  const fromHours = early + job.sealHours;
  const bond = waits.get('seal-bonds-unsanded');
  if (bond && job.sealHours >= bond.earliestHours && job.sealHours <= bond.latestHours) {
    // poured while it is tacky the seal is not waited for
    return {
      fromHours,
      untilHours: early + bond.latestHours,
      isWindow: true,
      lateHours: late + bond.latestHours,
    };
  }
  if (bond) {
    steps.push({
      ...at('bond-window', 0, early + bond.earliestHours, early + bond.latestHours, bond.because),
      isWindow: true,
    });
  }
  const lateHours = late + Math.max(job.sealHours, waits.get('seal-cure')?.latestHours ?? 0);
  return { fromHours, untilHours: lateHours, isWindow: false, lateHours };
}

/** Adds the steps after the pour. */
function afterPour(
  job: ScheduleJob,
  pour: readonly [number, number],
  waits: ReadonlyMap<ShopWaitId, ShopWait>,
  steps: ScheduleStep[],
): void {
  let [early, late] = pour;
  const layer = waits.get('next-layer');
  for (let turn = 2; turn <= job.layers && layer; turn++) {
    steps.push({
      ...at('next-layer', turn, early + layer.earliestHours, early + layer.latestHours, layer.because),
      isWindow: true,
    });
    early += layer.earliestHours;
    late += layer.latestHours;
  }
  const topUp = waits.get('top-up');
  if (topUp) {
    steps.push({
      ...at('top-up', 0, early + topUp.earliestHours, early + topUp.latestHours, topUp.because),
      isWindow: true,
    });
  }
  const hard = waits.get('hard');
  const full = waits.get('full-cure');
  if (hard && full) {
    steps.push(
      at('level', 0, early + hard.earliestHours, late + hard.latestHours, hard.because),
      at(
        'finish',
        0,
        early + hard.earliestHours + FINISH_AFTER_HOURS,
        late + hard.latestHours + FINISH_AFTER_HOURS,
        ['common-practice'],
      ),
      at('full-cure', 0, early + full.earliestHours, late + full.latestHours, full.because),
    );
  }
}

function at(
  step: StepId,
  turn: number,
  earliestHours: number,
  latestHours: number,
  because: readonly SourceId[],
): ScheduleStep {
  return { step, turn, earliestHours, latestHours, isWindow: false, because };
}
