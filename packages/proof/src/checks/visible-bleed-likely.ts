import { bleedClassEndsMm, limits } from '@pourproof/materials';
import { byGrain } from '@pourproof/plane';
import { colourBehindPath, hidesIn } from '../colours/streaks.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import { type BleedingWall, bleedingWalls } from './bleeding-walls.ts';
import type { Check } from './check.ts';
import { couponFirst } from './coupon-fix.ts';
import { placeOfPath } from './places.ts';
import { sealFixes } from './seal-fixes.ts';

/** At this probability a streak is as likely as not to be seen. */
const LIKELY = 0.5;

/**
 * A streak that is more likely to be seen than not, although it is shorter than `high-bleed-wall` reports: a
 * caution. Silent in wood where that finding speaks, and where the colour hides.
 */
export const visibleBleedLikely: Check = {
  code: 'visible-bleed-likely',
  run: (measured) => {
    const { colourCuts, blocks, shape } = measured;
    const [clean, moderate] = bleedClassEndsMm.value;
    const all = blocks.flatMap((each) => bleedingWalls(each, shape.leanRad, clean));
    const isGraver = new Set(all.filter(({ reachMm }) => reachMm >= moderate).map(({ inBlock }) => inBlock));
    const walls = all
      .filter(({ inBlock }) => !isGraver.has(inBlock))
      .map((wall) => ({ ...wall, chance: chanceOf(wall) }))
      .filter(({ chance, path, inBlock }) => {
        const colour = colourBehindPath(colourCuts, path);
        return chance >= LIKELY && (colour === null || !hidesIn(colour, inBlock.block));
      })
      .toSorted(byGrain(({ chance }) => -chance));
    const [worst] = walls;
    if (worst === undefined) {
      return null;
    }
    const { travel } = worst.inBlock;
    return {
      code: 'visible-bleed-likely',
      severity: 'caution',
      where: walls.map(({ atMm, path, lengthMm }) => placeOfPath(atMm, path, { what: 'wall', lengthMm })),
      measured: { value: 100 * worst.chance, quantity: 'probability', unit: '%' },
      limit: { value: 100 * LIKELY, quantity: 'probability', unit: '%' },
      basis: travel.basis,
      because: [...new Set([...travel.sources, ...limits.visibleStreak.because])],
      fix: {
        options: [
          ...couponFirst(measured.job, travel, { reachMm: worst.reachMm, limitsMm: [clean] }),
          ...sealsForAll(measured, all, clean),
        ],
      },
    };
  },
};

/** A seal that is enough for every wall, those too of which the graver finding speaks today. */
function sealsForAll(measured: Measured, all: readonly BleedingWall[], cleanMm: number): Fix[] {
  const [farthest] = all.toSorted(byGrain(({ reachMm }) => -reachMm));
  return farthest === undefined ? [] : sealFixes(measured, farthest.inBlock, farthest.reachMm, cleanMm);
}

/** Probability that a streak from a wall is long enough to be seen. */
function chanceOf({ reachMm, inBlock: { travel } }: BleedingWall): number {
  return travel.longerThan((limits.visibleStreak.value * travel.medianMm) / reachMm);
}
