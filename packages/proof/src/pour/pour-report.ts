import type { Job } from '@pourproof/job';
import type { Report } from '../report/report.ts';
import type { ScheduleStep } from '../schedule/plan-schedule.ts';
import { scheduleReport } from '../schedule/schedule-report.ts';
import type { ColourPour, PourPlan } from './pour-plan.ts';

/** The pour in the report: masses are what the scale shows, so that they add up in print. */
export function pourReport(plan: PourPlan, steps: readonly ScheduleStep[], job: Job): Report['pour'] {
  return {
    colours: plan.colours.map(colourReport),
    overpourMm: job.overpourMm,
    wastePct: job.wastePct,
    boards: job.boards,
    stepG: job.rows.scale.resolutionG.value,
    layers: { ...plan.layers },
    smallestBatchG: plan.smallestBatchG,
    smallestBatchZeroedG: plan.smallestZeroedG,
    smallestTrueBatchG: plan.smallestTrueG,
    schedule: scheduleReport(steps, job.start),
    ...(plan.price === null ? {} : { price: plan.price }),
  };
}

function colourReport(colour: ColourPour): Report['pour']['colours'][number] {
  const { cup, count } = colour;
  const [partA = 0, partB = 0, pigment = 0] = cup.partsG;
  const all = (grams: number): number => Number((grams * count.batches).toFixed(6));
  return {
    name: colour.name,
    ...(colour.resin === null ? {} : { resin: colour.resin }),
    volumeMl: colour.volumeMl,
    wasteMl: colour.wasteMl,
    massG: all(partA + partB),
    partAG: all(partA),
    partBG: all(partB),
    pigmentG: all(pigment),
    uncertaintyPct: colour.uncertaintyPct,
    uncertainty: colour.budget.items.map((item) => ({ ...item })),
    assumed: [...colour.assumed],
    cups: {
      count: count.batches,
      partAG: partA,
      partBG: partB,
      pigmentG: pigment,
      totalG: cup.totalG,
      runningG: [...cup.runningG],
      workingMinutes: count.workingMinutes,
      fillingMinutes: count.fillingMinutes,
      pocketsAtMost: count.pocketsPerBatch,
      isHurried: count.isHurried,
    },
    layers: { ...colour.layers },
    ...(colour.price === null ? {} : { price: colour.price }),
  };
}
