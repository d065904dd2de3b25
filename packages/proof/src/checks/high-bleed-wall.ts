import { endGrainLength } from '@pourproof/geometry';
import { bleedClassEndsMm, limits } from '@pourproof/materials';
import { inGrains, radians } from '@pourproof/plane';
import type { BlockMeasures } from '../board/block-measures.ts';
import { colourBehindPath, hidesIn } from '../colours/streaks.ts';
import type { Measured } from '../measured.ts';
import type { Finding } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { type BleedingWall, bleedingWalls } from './bleeding-walls.ts';
import type { Check } from './check.ts';
import { couponFirst } from './coupon-fix.ts';
import { placeOfPath } from './places.ts';
import { proposed } from './proposed.ts';
import { sealFixes } from './seal-fixes.ts';

/** Turns tried for the artwork, in degrees. */
const TURN_STEP_DEG = 5;
/** A turn is offered only when it spares at least this share of end grain (our choice). */
const WORTHWHILE = 0.2;

/**
 * Walls that cut the fibres open so squarely that colour is likely to run visibly into this wood under this
 * seal. Severe bleed is a stop where its colour does not hide in the wood.
 */
export const highBleedWall: Check = {
  code: 'high-bleed-wall',
  run: (measured) => {
    const [, moderate, severe] = bleedClassEndsMm.value;
    const walls = measured.blocks
      .flatMap((each) => bleedingWalls(each, measured.shape.leanRad, moderate))
      .map((wall) => ({ ...wall, isGrave: wall.reachMm >= severe && !hides(wall, measured) }))
      .toSorted((a, b) => Number(b.isGrave) - Number(a.isGrave) || inGrains(b.reachMm) - inGrains(a.reachMm));
    const [worst] = walls;
    if (worst === undefined) {
      return null;
    }
    const { travel } = worst.inBlock;
    return {
      code: 'high-bleed-wall',
      severity: worst.isGrave ? 'stop' : 'caution',
      where: walls.map(({ atMm, path, lengthMm }) => placeOfPath(atMm, path, { what: 'wall', lengthMm })),
      measured: { value: worst.reachMm, quantity: 'length', unit: 'mm' },
      limit: { value: moderate, quantity: 'length', unit: 'mm' },
      basis: travel.basis,
      ...bandOf(travel),
      because: [...new Set([...travel.sources, ...bleedClassEndsMm.because, ...limits.visibleStain.because])],
      fix: proposed(() => [
        ...couponFirst(measured.job, travel, { reachMm: worst.reachMm, limitsMm: [moderate, severe] }),
        ...sealFixes(measured, worst.inBlock, worst.reachMm, moderate),
        ...turnFix(measured),
      ]),
    };
  },
};

/** Whether the colour behind a wall differs too little from the wood to be seen in it. */
function hides({ path, inBlock }: BleedingWall, { colourCuts }: Measured): boolean {
  const colour = colourBehindPath(colourCuts, path);
  return colour !== null && hidesIn(colour, inBlock.block);
}

/** The band of a wood without a prior of its own, as a factor either way. */
function bandOf({
  woodKnown,
  basis,
  medianMm,
  highMm,
}: BlockMeasures['travel']): Pick<Finding, 'bandFactor'> {
  return woodKnown || basis === 'calibrated' ? {} : { bandFactor: highMm / medianMm };
}

/** The turn of the artwork that opens the least end grain, where it is worth the trouble. */
function turnFix(measured: Measured): Fix[] {
  const { cut, job } = measured;
  if (job.board !== null && job.board.blocks.length > 1) {
    // a turn would bring other blocks under the artwork
    return [];
  }
  const [{ grainDeg } = job] = measured.board.blocks;
  const now = endGrainLength(cut, radians(grainDeg));
  let best = { turn: 0, length: now };
  for (let turn = TURN_STEP_DEG; turn < 180; turn += TURN_STEP_DEG) {
    // turning the artwork counter-clockwise is turning the fibres clockwise under it
    const length = endGrainLength(cut, radians(grainDeg - turn));
    if (length < best.length) {
      best = { turn, length };
    }
  }
  const spared = now > 0 ? 1 - best.length / now : 0;
  if (spared < WORTHWHILE) {
    return [];
  }
  return [{ do: 'turn', deg: best.turn, sparedPct: Math.round(spared * 100), clears: false }];
}
