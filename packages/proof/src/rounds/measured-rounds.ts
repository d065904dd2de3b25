import type { Job } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { boundsOrZero } from '../board/bounds-or-zero.ts';
import { refuseShortBit } from '../cut/refuse-short-bit.ts';
import { type Measured, measure, measureArtwork } from '../measured.ts';
import type { Stages } from '../stages/stages.ts';
import type { FilledPocket } from './filled-pockets.ts';
import type { PlannedRound, RoundPlan } from './planned-rounds.ts';

/** A round with what it makes of the board. */
export interface MeasuredRound extends PlannedRound {
  readonly measured: Measured;
}

/** All rounds of a job, with the artwork as a whole. */
export interface MeasuredRounds extends Pick<Measured, 'artwork' | 'artworkArea' | 'artworkPerimeter'> {
  readonly rounds: readonly MeasuredRound[];
}

/**
 * Measures the rounds of a job one after the other, each as a cut of its own into the board as the ones before have left it.
 *
 * Every levelling takes its depth off the whole face: a round is carved that much lower, and what was poured before loses as much again. Heights
 * that were read on the rough board hold for the first round; the later ones are carved into the face as the levellings have left it.
 *
 * @throws {JobError} when a bit is too short for the depth of a round
 */
export function measuredRounds(drawing: Drawing, job: Job, plan: RoundPlan, stages: Stages): MeasuredRounds {
  const { artwork, artworkArea, artworkPerimeter } = measureArtwork(drawing, stages);
  const boundsMm = boundsOrZero(artwork);
  const rounds: MeasuredRound[] = [];
  plan.rounds.forEach((round, k) => {
    const levellings = plan.rounds.length - k;
    const own: Job = {
      ...job,
      depthMm: round.depthMm,
      bits: round.bits,
      levelMm: levellings * job.levelMm,
    };
    refuseShortBit(own);
    const filled = rounds.map(
      ({ bits, measured: { carving } }, earlier): FilledPocket => ({
        carving,
        loweredMm: (k - earlier) * job.levelMm,
        isUpright: bits.every(({ kind }) => kind === 'flat'),
        toleranceMm: job.toleranceMm,
      }),
    );
    const site = { boundsMm, artwork, colours: plan.colours, loweredMm: k * job.levelMm, levellings, filled };
    rounds.push({ ...round, measured: measure(round.drawing, own, site, stages) });
  });
  return { artwork, artworkArea, artworkPerimeter, rounds };
}
