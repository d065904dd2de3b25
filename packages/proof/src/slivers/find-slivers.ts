import { fibreVector, medialAxis, narrowStretches, outsideOf, strokeWidths } from '@pourproof/geometry';
import { limits } from '@pourproof/materials';
import { type CleanRegion, degrees, type Point, radians } from '@pourproof/plane';
import { blockAt } from '../board/block-at.ts';
import type { PlacedBlock } from '../board/place-board.ts';

/** A stretch of wood between pockets, or inside a counter, that is too thin for its height. */
export interface Sliver {
  readonly atMm: Point;
  readonly widthMm: number;
  /** Height of the wall: the depth of the pockets beside it. */
  readonly heightMm: number;
  readonly lengthMm: number;
  /** Angle between its long axis and the fibres, 0 to 90. */
  readonly angleDeg: number;
  /** Width that practice asks for. */
  readonly limitMm: number;
  readonly isShortGrain: boolean;
  readonly path: Float64Array;
}

/** What is left of the wood. */
export interface Slivers {
  readonly narrowestMm: number | null;
  readonly narrowestAt: Point;
  /** Thinnest first, against their limits. */
  readonly thin: readonly Sliver[];
}

/**
 * Angle between long axis and fibres from which wood counts as short grain (our choice: half a right angle).
 */
const SHORT_GRAIN_DEG = 45;
/**
 * Margin of wood around the artwork that is considered where no board is described, mm: wider than any limit.
 */
const RIM_MM = 60;

/**
 * Wood that stands between cuts thinner than practice allows: along the fibres a third of its height and 1
 * mm, across them half and 1.5 mm. Wood that runs out to a point is left out: every inner corner has some.
 *
 * Between sloping walls wood gets thicker downwards: it is judged by its thickness half way down the
 * shallowest groove, which holds wherever it stands.
 *
 * @param walls depth of the cut at its deepest, and how much narrower its shallowest groove is half way down
 * than at the face
 * @param blocks where fibres run; the first also stands for places outside of all
 */
export function findSlivers(
  cut: CleanRegion,
  walls: { readonly depthMm: number; readonly gainMm: number },
  blocks: readonly PlacedBlock[],
): Slivers {
  if (cut.ringEnds.length === 0) {
    return { narrowestMm: null, narrowestAt: [0, 0], thin: [] };
  }
  const axis = medialAxis(outsideOf(cut, RIM_MM));
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
        grainAt: (x, y) => (blocks[under(x, y)] ?? blocks[0])?.grainDeg ?? 0,
      }),
    );
  // as wide as the margin considered is open wood, not a sliver between cuts
  const isOpen = widths.narrowestMm === null || widths.narrowestMm > RIM_MM / 2;
  return {
    narrowestMm: isOpen ? null : widths.narrowestMm,
    narrowestAt: isOpen ? [0, 0] : widths.narrowestAt,
    thin: thin.toSorted((a, b) => a.widthMm / a.limitMm - b.widthMm / b.limitMm),
  };
}

interface Terms {
  readonly along: number;
  readonly across: number;
  readonly depthMm: number;
  /** Fibres at a place, degrees. */
  readonly grainAt: (x: number, y: number) => number;
}

/** Runs of an axis line whose width is below the limit for the way its fibres run there. */
function thinRuns(path: Float64Array, widths: Float64Array, terms: Terms): readonly Sliver[] {
  const runs: Run[] = [];
  let run: Run | null = null;
  for (let i = 0; i + 1 < widths.length; i++) {
    const [ax, ay, bx, by] = path.subarray(2 * i, 2 * i + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) {
      continue;
    }
    const [fx, fy] = fibreVector(radians(terms.grainAt((ax + bx) / 2, (ay + by) / 2)));
    const angleDeg = degrees(Math.acos(Math.min(1, Math.abs(((bx - ax) * fx + (by - ay) * fy) / length))));
    const isShortGrain = angleDeg >= SHORT_GRAIN_DEG;
    const limitMm = isShortGrain ? terms.across : terms.along;
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
  // shorter than it is thick is a bottleneck between round pockets, which the cut passes in one go (our
  // choice)
  return runs
    .filter((each) => each.lengthMm > each.widthMm)
    .map(({ points, turned, at, ...each }) => ({
      ...each,
      atMm: at,
      heightMm: terms.depthMm,
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
