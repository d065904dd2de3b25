import { endGrainLength } from '@pourproof/geometry';
import { bleedClassEndsMm } from '@pourproof/materials';
import { type Point, radians } from '@pourproof/plane';
import type { BlockMeasures } from '../board/block-measures.ts';
import { blockWallRuns } from '../board/block-wall-runs.ts';
import type { Measured } from '../measured.ts';
import type { Finding } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { lengthOf, placeOfPath } from './places.ts';
import { sealFixes } from './seal-fixes.ts';

/** Walls at risk closer together than this are reported as one place, mm (our choice). */
const JOIN_MM = 0.5;
/**
 * Shorter walls make a streak too fine to be seen, mm (our choice: about the visible streak of the tables).
 */
const MIN_WALL_MM = 0.5;
/** Turns tried for the artwork, in degrees. */
const TURN_STEP_DEG = 5;
/** A turn is offered only when it spares at least this share of end grain (our choice). */
const WORTHWHILE = 0.2;

/**
 * Walls that cut the fibres open so squarely that colour is likely to run visibly into this wood under this
 * seal.
 */
export const highBleedWall: Check = {
  code: 'high-bleed-wall',
  run: (measured) => {
    const [, moderate, severe] = bleedClassEndsMm.value;
    const walls = measured.blocks
      .flatMap((each) => riskyWalls(each, measured.shape.leanRad, moderate))
      .toSorted((a, b) => b.lengthMm * b.reachMm - a.lengthMm * a.reachMm);
    const [first] = walls;
    if (first === undefined) {
      return null;
    }
    const worst = walls.reduce((most, each) => (each.reachMm > most.reachMm ? each : most), first);
    return {
      code: 'high-bleed-wall',
      severity: worst.reachMm >= severe ? 'stop' : 'caution',
      where: walls.map((wall) =>
        placeOfPath(wall.atMm, wall.path, { what: 'wall', lengthMm: wall.lengthMm }),
      ),
      measured: { value: worst.reachMm, quantity: 'length', unit: 'mm' },
      limit: { value: moderate, quantity: 'length', unit: 'mm' },
      basis: worst.inBlock.travel.basis,
      ...bandOf(worst.inBlock.travel),
      because: [...new Set([...worst.inBlock.travel.sources, ...bleedClassEndsMm.because])],
      fix: {
        options: [...sealFixes(measured, worst.inBlock, worst.reachMm, moderate), ...turnFix(measured)],
      },
    };
  },
};

/** The band of a wood without a prior of its own, as a factor either way. */
function bandOf({
  woodKnown,
  basis,
  medianMm,
  highMm,
}: BlockMeasures['travel']): Pick<Finding, 'bandFactor'> {
  return woodKnown || basis === 'calibrated' ? {} : { bandFactor: highMm / medianMm };
}

/** A stretch of wall at risk, in one block. */
interface RiskyWall {
  readonly path: Float64Array;
  readonly atMm: Point;
  readonly lengthMm: number;
  /** Travel times the highest exposure of the stretch. */
  readonly reachMm: number;
  readonly inBlock: BlockMeasures;
}

function riskyWalls(inBlock: BlockMeasures, leanRad: number, moderate: number): readonly RiskyWall[] {
  const { medianMm } = inBlock.travel;
  if (medianMm < moderate) {
    return [];
  }
  return blockWallRuns(inBlock, leanRad, {
    minExposure: moderate / medianMm,
    joinGapMm: JOIN_MM,
    minLengthMm: MIN_WALL_MM,
  })
    .map(({ path, atMm, exposure }) => ({
      path,
      atMm,
      lengthMm: lengthOf(path),
      reachMm: medianMm * exposure,
      inBlock,
    }))
    .filter(({ lengthMm }) => lengthMm >= MIN_WALL_MM);
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
