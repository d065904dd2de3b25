import { bleedClassEndsMm, limits } from '@pourproof/materials';
import { radians } from '@pourproof/plane';
import { type BlockMeasures, inFace } from '../board/block-measures.ts';
import { blockWallRuns } from '../board/block-wall-runs.ts';
import { highestSideways } from '../board/wall-exposure.ts';
import { colourBehindPath, hidesIn } from '../colours/streaks.ts';
import type { Check } from './check.ts';
import { couponFix } from './coupon-fix.ts';
import { lengthOf, placeOfPath } from './places.ts';
import { sealFixes } from './seal-fixes.ts';

/** At this probability a streak is as likely as not to be seen. */
const LIKELY = 0.5;
/** Shorter walls make no streak worth mentioning, mm (our choice). */
const MIN_WALL_MM = 0.5;

/**
 * A streak that is more likely to be seen than not, although it is shorter than `high-bleed-wall` reports: a
 * caution. Silent where that finding applies, and where the colour hides in the wood.
 */
export const visibleBleedLikely: Check = {
  code: 'visible-bleed-likely',
  run: (measured) => {
    const { colourCuts } = measured;
    const { leanRad } = measured.shape;
    const [clean, moderate] = bleedClassEndsMm.value;
    const reachOf = ({ block, travel }: BlockMeasures): number =>
      travel.medianMm * highestSideways({ diveRad: radians(block.diveDeg), leanRad });
    const risky = measured.blocks.filter((each) => {
      const reach = reachOf(each);
      return (
        reach > clean &&
        reach < moderate &&
        each.exposedLengthMm > 0 &&
        colourCuts.some(({ colour }) => !hidesIn(colour, each.block))
      );
    });
    const worst = risky.toSorted((a, b) => b.travel.medianMm - a.travel.medianMm)[0];
    if (worst === undefined) {
      return null;
    }
    const chance = worst.travel.longerThan(limits.visibleStreak.value / inFace(radians(worst.block.diveDeg)));
    const walls = risky.flatMap((each) =>
      blockWallRuns(each, leanRad, {
        minExposure: clean / each.travel.medianMm,
        joinGapMm: MIN_WALL_MM,
        minLengthMm: MIN_WALL_MM,
      }).filter(({ path }) => {
        const colour = colourBehindPath(colourCuts, path);
        return colour === null || !hidesIn(colour, each.block);
      }),
    );
    if (chance < LIKELY || walls.length === 0) {
      return null;
    }
    return {
      code: 'visible-bleed-likely',
      severity: 'caution',
      where: walls.map(({ atMm, path }) =>
        placeOfPath(atMm, path, { what: 'wall', lengthMm: lengthOf(path) }),
      ),
      measured: { value: 100 * chance, quantity: 'probability', unit: '%' },
      limit: { value: 100 * LIKELY, quantity: 'probability', unit: '%' },
      basis: worst.travel.basis,
      because: [...new Set([...worst.travel.sources, ...limits.visibleStreak.because])],
      fix: {
        options: [...sealFixes(measured, worst, reachOf(worst), clean), ...couponFix(worst.travel, 3)],
      },
    };
  },
};
