import { bleedClassEndsMm, limits } from '@pourproof/materials';
import { radians } from '@pourproof/plane';
import { type BlockMeasures, inFace, travelIn } from '../board/block-measures.ts';
import { type EndAtJoint, endsAtJoint } from '../board/ends-at-joint.ts';
import type { PlacedBlock } from '../board/place-board.ts';
import { colourBehind, hidesIn } from '../colours/streaks.ts';
import type { Measured } from '../measured.ts';
import type { Check } from './check.ts';
import { couponFirst } from './coupon-fix.ts';
import { placeOfPath } from './places.ts';
import { sealFixes } from './seal-fixes.ts';

/** Colour that is likely to run along the fibres through a joint into a paler wood, where it shows whatever hides it in its own. */
export const bleedReachesBlock: Check = {
  code: 'bleed-reaches-block',
  run: (measured) => {
    const { visibleStreak } = limits;
    const [, stain] = bleedClassEndsMm.value;
    const ends = measured.blocks
      .flatMap((inBlock) => endsIn(inBlock, measured))
      .filter(({ streakMm }) => streakMm >= visibleStreak.value)
      .toSorted((a, b) => b.streakMm - a.streakMm);
    const [worst] = ends;
    if (worst === undefined) {
      return null;
    }
    const { inBlock, end, reachMm, streakMm } = worst;
    return {
      code: 'bleed-reaches-block',
      severity: streakMm >= stain ? 'stop' : 'caution',
      where: ends.map((each) =>
        placeOfPath(each.end.from, [...each.end.from, ...each.end.to], {
          what: 'wood',
          widthMm: each.end.gapMm,
        }),
      ),
      measured: { value: streakMm, quantity: 'length', unit: 'mm' },
      limit: { value: visibleStreak.value, quantity: 'length', unit: 'mm' },
      basis: inBlock.travel.basis,
      because: [
        ...new Set([
          ...inBlock.travel.sources,
          ...visibleStreak.because,
          ...bleedClassEndsMm.because,
          'washburn-1921',
        ]),
      ],
      fix: {
        options: [
          ...couponFirst(measured.job, inBlock.travel, { reachMm, limitsMm: [end.gapMm] }),
          ...sealFixes(measured, inBlock, reachMm, end.gapMm),
        ],
      },
    };
  },
};

interface Reached {
  readonly end: EndAtJoint;
  readonly inBlock: BlockMeasures;
  /** Median reach along the fibres in the face. */
  readonly reachMm: number;
  /** Median of what is left of it behind the joint, in the wood there. */
  readonly streakMm: number;
}

function endsIn(inBlock: BlockMeasures, measured: Measured): readonly Reached[] {
  const { block, travel } = inBlock;
  const { job, board, colourCuts } = measured;
  const reachMm = travel.medianMm * inFace(radians(block.diveDeg));
  return endsAtJoint(inBlock, reachMm, board.blocks)
    .filter(({ into, from, to }) => {
      const colour = colourBehind(colourCuts, from, [to[0] - from[0], to[1] - from[1]]);
      return isPaler(into, block) && (colour === null || !hidesIn(colour, into));
    })
    .map((end) => {
      // the way grows with the root of time (Washburn): what time is left after the joint
      const share = Math.sqrt(1 - (end.gapMm / reachMm) ** 2);
      const there = travelIn(end.into, job).medianMm * inFace(radians(end.into.diveDeg));
      return { end, inBlock, reachMm, streakMm: share * there };
    });
}

/** Whether a wood is lighter than another; where either colour is not known, whether it is another wood. */
function isPaler({ row: into }: PlacedBlock, { row: from }: PlacedBlock): boolean {
  const [there, here] = [into.lab?.value[0], from.lab?.value[0]];
  return there === undefined || here === undefined ? into !== from : there > here;
}
