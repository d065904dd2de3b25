import type { Job } from '@pourproof/job';
import type { BleedJob } from '@pourproof/materials';
import { byGrain, radians } from '@pourproof/plane';
import { type BlockMeasures, inFace, travelIn } from '../board/block-measures.ts';
import { type EndAtEdge, endsAtEdge } from '../board/ends-at-edge.ts';
import { colourBehind, hidesIn } from '../colours/streaks.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { couponFirst } from './coupon-fix.ts';
import { placeOfPath } from './places.ts';
import { sealFixes } from './seal-fixes.ts';

/** Colour that is likely to run along the fibres out of the edge of a described board. */
export const bleedReachesEdge: Check = {
  code: 'bleed-reaches-edge',
  run: (measured) => {
    const ends = measured.blocks
      .flatMap((inBlock) => endsIn(inBlock, measured))
      .filter(({ inBlock: { block }, end: { from, to } }) => {
        const colour = colourBehind(measured.colourCuts, from, [to[0] - from[0], to[1] - from[1]]);
        return colour === null || !hidesIn(colour, block);
      })
      .toSorted(byGrain(({ end, reachMm }) => end.gapMm / reachMm));
    const certain = ends.filter(({ end, leastMm }) => end.gapMm < leastMm);
    const [worst] = ends;
    if (worst === undefined) {
      return null;
    }
    const { end, reachMm, inBlock } = worst;
    return {
      code: 'bleed-reaches-edge',
      severity: certain.length > 0 ? 'stop' : 'caution',
      where: ends.map((each) =>
        placeOfPath(each.end.from, [...each.end.from, ...each.end.to], {
          what: 'rim',
          widthMm: each.end.gapMm,
        }),
      ),
      measured: { value: end.gapMm, quantity: 'width', unit: 'mm' },
      limit: { value: reachMm, quantity: 'length', unit: 'mm' },
      basis: inBlock.travel.basis,
      because: [...inBlock.travel.sources],
      fix: {
        options: [
          ...couponFirst(measured.job, inBlock.travel, { reachMm, limitsMm: [end.gapMm] }),
          ...seals(ends, measured),
        ],
      },
    };
  },
};

interface Reached {
  readonly end: EndAtEdge;
  /** Median reach along the fibres in the face, and its low end. */
  readonly reachMm: number;
  readonly leastMm: number;
  readonly inBlock: BlockMeasures;
}

function endsIn(inBlock: BlockMeasures, { job, board }: Measured): readonly Reached[] {
  const { block, travel } = inBlock;
  const share = inFace(radians(block.diveDeg));
  const reachMm = travel.medianMm * share;
  return job.board === null || !(reachMm > 0)
    ? []
    : endsAtEdge(inBlock, reachMm, job.board, board).map((end) => ({
        end,
        reachMm,
        leastMm: travel.lowMm * share,
        inBlock,
      }));
}

/** The seal that the worst place needs, if it is enough for all of them. */
function seals(ends: readonly Reached[], measured: Measured): Fix[] {
  const { job } = measured;
  return ends.slice(0, 1).flatMap(({ inBlock, reachMm, end }) =>
    sealFixes(measured, inBlock, reachMm, end.gapMm).filter((fix) =>
      ends.every((each) => {
        const seal = sealAfter(fix, job);
        if (seal === null) {
          return false;
        }
        const travel = travelIn(each.inBlock.block, job, seal);
        return (travel.medianMm * each.reachMm) / each.inBlock.travel.medianMm < each.end.gapMm;
      }),
    ),
  );
}

/** The seal that a way out leaves the job with. */
function sealAfter(fix: Fix, job: Job): Pick<BleedJob, 'seal' | 'coats' | 'sealHours'> | null {
  if (fix.do === 'wait') {
    return { seal: job.rows.seal, coats: job.coats, sealHours: job.sealHours + fix.hours };
  }
  const seal = fix.do === 'change-seal' ? job.materials.sealers[fix.seal] : undefined;
  return fix.do !== 'change-seal' || seal === undefined
    ? null
    : { seal, coats: fix.coats, sealHours: fix.hours };
}
