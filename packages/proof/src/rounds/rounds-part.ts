import type { Report } from '../report/report.ts';
import { resinTaken } from './filled-pockets.ts';
import type { MeasuredRound } from './measured-rounds.ts';

type RoundPart = NonNullable<Report['rounds']>[number];

/**
 * What each round does by itself.
 *
 * @param pours the pour of each round, in the report's figures
 * @param schedule steps of all rounds
 */
export function roundsPart(
  rounds: readonly MeasuredRound[],
  pours: readonly Report['pour'][],
  schedule: Report['pour']['schedule'],
): readonly RoundPart[] {
  return rounds.map(({ colours, measured }, k): RoundPart => {
    const { job, site, carving, levelling, efforts, heights } = measured;
    const poured = pours[k]?.colours ?? [];
    const sum = (of: (colour: Report['pour']['colours'][number]) => number): number =>
      Number(poured.reduce((total, colour) => total + of(colour), 0).toFixed(6));
    const steps = schedule.flatMap((step, index) => (step.round === k + 1 ? [index] : []));
    const when = (name: string): RoundPart['beginsHours'] => {
      const step = schedule.find((each) => each.round === k + 1 && each.step === name);
      return { earliest: step?.earliestHours ?? 0, latest: step?.latestHours ?? 0 };
    };
    return {
      round: k + 1,
      colours: colours.map(({ name }) => name),
      depthMm: job.depthMm,
      cutters: [...job.bits],
      loweredMm: site.loweredMm,
      ...(heights === null ? {} : { faceRangeMm: heights.highestMm - heights.lowestMm }),
      levelledMm: job.levelMm,
      marginMm: levelling.marginMm,
      leftMm: levelling.leftMm,
      cutAreaMm2: measured.cutArea,
      volumeMm3: carving.volumeMm3,
      resinMm3: resinIn(measured),
      massG: sum(({ massG }) => massG),
      partAG: sum(({ partAG }) => partAG),
      partBG: sum(({ partBG }) => partBG),
      pigmentG: sum(({ pigmentG }) => pigmentG),
      minutes: efforts().bits.reduce((total, { minutes }) => total + minutes, 0),
      beginsHours: when('carve'),
      levelHours: when('level'),
      steps,
    };
  });
}

/** Cured resin among what a round's bits remove, mm³; never more than all of it. */
export function resinIn({ carving, site, job }: MeasuredRound['measured']): number {
  return site.filled.length === 0
    ? 0
    : Math.min(carving.volumeMm3, resinTaken(carving, site.filled, job.toleranceMm));
}
