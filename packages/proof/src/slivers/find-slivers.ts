import {
  fibreVector,
  medialAxis,
  narrowStretches,
  outsideOf,
  separateParts,
  strokeWidths,
} from '@pourproof/geometry';
import { limits } from '@pourproof/materials';
import { byGrain, type CleanRegion, degrees, type Point, radians } from '@pourproof/plane';
import { blockAt } from '../board/block-at.ts';
import type { PlacedBlock } from '../board/place-board.ts';
import type { Stages } from '../stages/stages.ts';

/** A stretch of wood between pockets, or in a counter, that is too thin for its height. */
export interface Sliver {
  readonly atMm: Point;
  readonly widthMm: number;
  /** Height of the wall: the depth of the pockets beside it. */
  readonly heightMm: number;
  readonly lengthMm: number;
  /** Angle between its long axis and the fibres, degrees, 0 to 90. */
  readonly angleDeg: number;
  /** Least width by common practice. */
  readonly limitMm: number;
  readonly isShortGrain: boolean;
  readonly path: Float64Array;
}

/** A post of wood that stands alone in a pocket: a counter, a dot left in a letter. */
export interface Island {
  readonly atMm: Point;
  /** Diameter of the largest disc within it, half-way down between sloping walls. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Least width by common practice. */
  readonly limitMm: number;
}

/** The wood left between cuts. */
export interface Slivers {
  readonly narrowestMm: number | null;
  readonly narrowestAt: Point;
  /** Slivers below their limits, thinnest relative to its limit first. */
  readonly thin: readonly Sliver[];
  /** Islands below their limit, thinnest first. */
  readonly islands: readonly Island[];
}

/**
 * Least angle between long axis and fibres that counts as short grain (our choice: half of a right angle).
 */
const SHORT_GRAIN_DEG = 45;
/** Margin of wood considered around the artwork, mm: wider than any limit. */
const WOOD_MARGIN_MM = 60;

/**
 * Wood between cuts that is thinner than common practice allows: a third of its height, at least 1 mm, along
 * the fibres; half of it, at least 1.5 mm, across them and on end grain, where it splits in every direction. Tapering points of wood do not count: every inner
 * corner has one.
 *
 * Between sloping walls, wood gets thicker downwards: it is judged by its thickness half-way down the
 * shallowest groove, which is on the safe side everywhere.
 *
 * @param walls greatest depth of the cut, and how much narrower its shallowest groove is half-way down than
 * at the face
 * @param blocks the blocks with their fibres; the first also counts for points outside all blocks
 */
export function findSlivers(
  cut: CleanRegion,
  walls: { readonly depthMm: number; readonly gainMm: number },
  blocks: readonly PlacedBlock[],
  stages: Stages,
): Slivers {
  if (cut.ringEnds.length === 0) {
    return { narrowestMm: null, narrowestAt: [0, 0], thin: [], islands: [] };
  }
  const axis = stages.of('wood-axis', [cut], null, () => medialAxis(outsideOf(cut, WOOD_MARGIN_MM)));
  const { depthMm, gainMm } = walls;
  const along = Math.max(limits.wallAlongGrain.value, limits.wallAlongGrainToDepth.value * depthMm);
  const across = Math.max(limits.wallShortGrain.value, limits.wallShortGrainToDepth.value * depthMm);
  const widths = strokeWidths(axis);
  const under = blockAt(blocks);
  const thin = narrowStretches(axis, Math.max(0, Math.max(along, across) - gainMm))
    .filter((stretch) => stretch.kind === 'stroke')
    .flatMap((stretch) =>
      thinRuns(stretch.path, stretch.widths, {
        along: along - gainMm,
        across: across - gainMm,
        depthMm,
        fibresAt: (x, y) => blocks[under(x, y)] ?? blocks[0] ?? LEVEL_FIBRES,
      }),
    );
  // wood as wide as the margin is open, not a sliver between cuts
  const isOpen = widths.narrowestMm === null || widths.narrowestMm > WOOD_MARGIN_MM / 2;
  return {
    narrowestMm: isOpen ? null : widths.narrowestMm,
    narrowestAt: isOpen ? [0, 0] : widths.narrowestAt,
    thin: thin.toSorted(byGrain(({ widthMm, limitMm }) => widthMm / limitMm)),
    islands: separateParts(axis)
      .filter(({ strokeMm }) => strokeMm === 0)
      .map(({ atMm, widthMm }) => ({
        atMm,
        widthMm: widthMm + gainMm,
        heightMm: depthMm,
        limitMm: islandLimitMm(depthMm),
      }))
      .filter(({ widthMm, limitMm }) => widthMm < limitMm)
      .toSorted(byGrain(({ widthMm }) => widthMm)),
  };
}

/**
 * Width from which an island of a height stands: that of the limit, or less where its foot is large for its height. The ratio is of a round foot,
 * π w²/4 over h.
 */
function islandLimitMm(heightMm: number): number {
  return Math.min(
    limits.islandWidth.value,
    Math.sqrt((4 / Math.PI) * limits.islandFootToHeight.value * heightMm),
  );
}

type Fibres = Pick<PlacedBlock, 'grainDeg' | 'diveDeg'>;

const LEVEL_FIBRES: Fibres = { grainDeg: 0, diveDeg: 0 };

interface ThinLimits {
  readonly along: number;
  readonly across: number;
  readonly depthMm: number;
  readonly fibresAt: (x: number, y: number) => Fibres;
}

/** Runs of an axis line with a width below the limit for the direction of the fibres there. */
function thinRuns(path: Float64Array, widths: Float64Array, limitsHere: ThinLimits): readonly Sliver[] {
  const runs: Run[] = [];
  let run: Run | null = null;
  for (let i = 0; i + 1 < widths.length; i++) {
    const [ax, ay, bx, by] = path.subarray(2 * i, 2 * i + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) {
      continue;
    }
    const { grainDeg, diveDeg } = limitsHere.fibresAt((ax + bx) / 2, (ay + by) / 2);
    const [fx, fy] = fibreVector(radians(grainDeg));
    // fibres that dive are out of line with every wall: on an end-grain board the azimuth says nothing
    const inLine = Math.abs(((bx - ax) * fx + (by - ay) * fy) / length) * Math.cos(radians(diveDeg));
    const angleDeg = degrees(Math.acos(Math.min(1, inLine)));
    const isShortGrain = angleDeg >= SHORT_GRAIN_DEG;
    const limitMm = isShortGrain ? limitsHere.across : limitsHere.along;
    const [wa, wb] = [widths[i] as number, widths[i + 1] as number];
    if (Math.min(wa, wb) >= limitMm) {
      run = null;
      continue;
    }
    if (run === null || run.isShortGrain !== isShortGrain) {
      run = { isShortGrain, limitMm, points: [ax, ay], lengthMm: 0, turned: 0, widthMm: wa, at: [ax, ay] };
      runs.push(run);
    }
    run.points.push(bx, by);
    run.lengthMm += length;
    run.turned += angleDeg * length;
    if (wb < run.widthMm) {
      run.widthMm = wb;
      run.at = [bx, by];
    }
  }
  // a run shorter than it is thick is only a bottleneck between round pockets (our choice)
  return runs
    .filter((each) => each.lengthMm > each.widthMm)
    .map(({ points, turned, at, ...each }) => ({
      ...each,
      atMm: at,
      heightMm: limitsHere.depthMm,
      angleDeg: turned / each.lengthMm,
      path: Float64Array.from(points),
    }));
}

interface Run {
  readonly isShortGrain: boolean;
  readonly limitMm: number;
  readonly points: number[];
  lengthMm: number;
  turned: number;
  widthMm: number;
  at: Point;
}
