import { endGrainLength } from '@pourproof/geometry';
import { bleedClassEndsMm } from '@pourproof/materials';
import { formatLength, type Point, radians } from '@pourproof/plane';
import type { BlockMeasures } from '../board/block-measures.ts';
import { blockWallRuns } from '../board/block-wall-runs.ts';
import type { Measured } from '../measured.ts';
import type { FixOption } from '../report/report.ts';
import { basisWords, isPrior } from './bleed-basis.ts';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';
import { sealFixes } from './seal-fixes.ts';

/** Walls at risk closer together than this are one place for a reader, mm (our choice). */
const JOIN_MM = 0.5;
/** Shorter walls at risk make a streak finer than is seen, mm (our choice: about the visible streak of the tables). */
const LEAST_WALL_MM = 0.5;
/** Turns tried for the artwork, in degrees. */
const TURN_STEP_DEG = 5;
/** A turn is offered only when it spares at least this share of end grain (our choice). */
const WORTHWHILE = 0.2;

/** Walls that cut the fibres open so squarely that colour is likely to run visibly into this wood under this seal. */
export const highBleedWall: Check = {
  code: 'high-bleed-wall',
  title: 'High bleed risk on this wall',
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
      where: walls.map((wall) => placeOfPath(wall.atMm, wall.path)),
      measured: { value: worst.reachMm, unit: 'mm' },
      limit: { value: moderate, unit: 'mm' },
      because: [...new Set([...worst.inBlock.travel.sources, ...bleedClassEndsMm.because])],
      fix: {
        options: [...sealFixes(measured.job, worst.inBlock, worst.reachMm, moderate), ...turnFix(measured)],
      },
    };
  },
  advise: (finding, unit) => ({
    headline: `Colour is likely to run out of ${finding.where.length === 1 ? 'one stretch of wall' : `${finding.where.length} stretches of wall`}: about ${formatLength(finding.measured.value, unit)} at the worst (${basisWords(finding)}${isPrior(finding) ? '; a fifth to five times that is possible' : ''}), against a limit of ${formatLength(finding.limit.value, unit)}.`,
    why: 'Where a wall cuts across the fibres, their open ends drink colour like straws. Levelling does not take such a streak away: the ends are open from face to floor, and the leaning wall of a V only thins it.',
    fixes:
      finding.fix.options.length === 0
        ? [
            'No seal of the list brings it below that: choose a denser wood, or cut test slots in the same board and look.',
          ]
        : finding.fix.options.map((option) =>
            option.do === 'change-seal'
              ? `Seal with ${option.value} before the colour.`
              : `Turn the artwork by ${option.value}° counter-clockwise on the board: ${option.unit.replace('deg, ', '')} end grain in the walls, though those that stay need a seal.`,
          ),
  }),
};

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
    minLengthMm: LEAST_WALL_MM,
  })
    .map(({ path, atMm, exposure }) => ({
      path,
      atMm,
      lengthMm: lengthOf(path),
      reachMm: medianMm * exposure,
      inBlock,
    }))
    .filter(({ lengthMm }) => lengthMm >= LEAST_WALL_MM);
}

function lengthOf(path: Float64Array): number {
  let sum = 0;
  for (let i = 0; i + 3 < path.length; i += 2) {
    sum += Math.hypot(
      (path[i + 2] as number) - (path[i] as number),
      (path[i + 3] as number) - (path[i + 1] as number),
    );
  }
  return sum;
}

/** The turn of the artwork that opens the least end grain, where it is worth the trouble. */
function turnFix(measured: Measured): FixOption[] {
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
  return [
    { do: 'turn-grain', value: best.turn, unit: `deg, ${Math.round(spared * 100)} % less`, clears: false },
  ];
}
