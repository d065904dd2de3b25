import { booleans, resolveRegions } from '@pourproof/arrangement';
import type { Carving } from '@pourproof/cutting';
import {
  arcRingsLength,
  fibreVector,
  sweepAlong,
  sweptArea,
  type WoodAlong,
  woodAlong,
} from '@pourproof/geometry';
import type { Job } from '@pourproof/job';
import { type BleedJob, type CalibratedTravel, calibratedTravel, type Wood } from '@pourproof/materials';
import { type CleanRegion, packRings, perimeter, radians, ringsBounds, signedArea } from '@pourproof/plane';
import type { CutMeasures } from '../cut/measure-cut.ts';
import { type FilledPocket, slabsOf, woodAt } from '../rounds/filled-pockets.ts';
import { Stages } from '../stages/stages.ts';
import { type BlockWalls, blockWalls } from './block-walls.ts';
import { type CarvedExposure, carvedExposure } from './carved-exposure.ts';
import { onlyCrosses } from './is-within.ts';
import { jointBands } from './joint-bands.ts';
import { nearParts } from './near-parts.ts';
import type { PlacedBlock } from './place-board.ts';

/** Measures of a cut in one block. Areas in mm², lengths in mm. */
export interface BlockMeasures {
  /** Its index among the blocks of the board. */
  readonly index: number;
  readonly block: PlacedBlock;
  readonly travel: CalibratedTravel;
  /** The part of the cut in this block. */
  readonly cut: CleanRegion;
  /** The cut in this block and a little beyond it; farther away parts may be missing. */
  readonly near: CleanRegion;
  readonly floorAreaMm2: number;
  readonly wallAreaMm2: number;
  readonly wallLengthMm: number;
  /**
   * ∫ |n·f| ds along the outline, f the fibre's component in the face: exposure of upright walls per mm of
   * depth.
   */
  readonly exposedLengthMm: number;
  /** ∫ |n·f| dA. */
  readonly wallExposedMm2: number;
  readonly floorExposedMm2: number;
  /** Parts of the face that colour reaches, clipped to the block: each is made when it is first looked at, which no check does. */
  readonly bleed: BleedReach<CleanRegion>;
  /** Their areas, mm². */
  readonly bleedAreas: (stages: Stages) => BleedReach<number>;
}

/** What colour reaches at the low, median and high travel. */
export interface BleedReach<T> {
  readonly low: T;
  readonly median: T;
  readonly high: T;
}

/** What of a job the walls and floors of its blocks depend on. */
type WalledJob = Pick<Job, 'bits' | 'depthMm'>;

/** The board, and what was cut and filled in it before. */
interface BoardBefore {
  readonly board: readonly PlacedBlock[];
  readonly filled: readonly FilledPocket[];
  readonly stages: Stages;
}

/** The wood around walls and under floors. */
interface Surroundings {
  readonly blocks: readonly PlacedBlock[];
  readonly floors: readonly PlacedBlock[];
  readonly stages: Stages;
}

/** What a cut does in one block, whatever its wood. */
interface BlockCut {
  readonly index: number;
  /** The block, less what is cured resin at the face. */
  readonly block: PlacedBlock;
  readonly cut: CleanRegion;
  readonly near: CleanRegion;
  readonly sizes: Omit<BlockMeasures, 'index' | 'block' | 'travel' | 'cut' | 'near' | 'bleed' | 'bleedAreas'>;
}

/**
 * Measures the cut in every block that it meets: walls, floor, exposure of end grain, and the face that
 * colour may reach.
 *
 * The exact area of the floor and length of the walls are divided in proportion to the flattened outlines. For upright walls, |n·f| is
 * the fibre's component in the face times |n·f₂|, and for a floor sin(dive); other walls are summed element
 * by element.
 *
 * Cured resin of earlier rounds is no wood: walls and floors in it count for nothing, and it stops what runs along the fibres.
 *
 * @param filled pockets of earlier rounds
 */
export function blockMeasures(
  { cutRegion, carving }: Pick<CutMeasures, 'cutRegion' | 'carving'>,
  job: Job,
  board: readonly PlacedBlock[],
  filled: readonly FilledPocket[],
  stages: Stages,
): readonly BlockMeasures[] {
  const { bits, depthMm } = job;
  const pockets = filled.map(({ carving: _, ...rest }) => rest);
  const earlier = filled.map((pocket) => pocket.carving);
  const walls = stages.of('walls', [cutRegion, carving, board, ...earlier], { bits, depthMm, pockets }, () =>
    blockCuts(cutRegion, carving, { bits, depthMm }, { board, filled, stages }),
  );
  // many blocks, few woods
  const byWood = new Map<Wood, Map<PlacedBlock['part'], CalibratedTravel>>();
  const travelOf = ({ row, part }: PlacedBlock): CalibratedTravel => {
    const byPart = byWood.get(row) ?? new Map<PlacedBlock['part'], CalibratedTravel>();
    const travel = byPart.get(part) ?? travelIn({ row, part }, job, {}, stages);
    byWood.set(row, byPart.set(part, travel));
    return travel;
  };
  const met = walls.map((each) => ({ ...each, travel: travelOf(each.block) }));
  const travels = met.map(({ travel }) => travel);
  return stages.of('blocks', [walls, ...new Set(travels)], travels.map(indexIn([...new Set(travels)])), () =>
    met.map(({ index, cut, near, sizes, block, travel }) => ({
      index,
      block,
      travel,
      cut,
      near,
      ...sizes,
      ...bleedIn({ cut, near, block, travel }),
    })),
  );
}

function indexIn<T>(all: readonly T[]): (each: T) => number {
  const places = new Map(all.map((each, k) => [each, k]));
  return (each) => places.get(each) ?? -1;
}

function blockCuts(
  cut: CleanRegion,
  carving: Carving,
  job: WalledJob,
  { board, filled, stages }: BoardBefore,
): readonly BlockCut[] {
  const blocks = woodAt(board, filled, 0, cut);
  const floors = woodAt(board, filled, job.depthMm, cut);
  const byBlock = blockWalls(cut, blocks);
  const upright = uprightWalls(cut, board, filled, job.depthMm);
  const carved = job.bits.every(({ kind }) => kind === 'flat')
    ? null
    : carvedIn(carving, cut, { blocks, floors, stages });
  const whole = signedArea(cut);
  const longer = cut.ringEnds.length === 0 ? 1 : arcRingsLength(carving.outline) / perimeter(cut);
  const nearby =
    cut.ringEnds.length === 0
      ? blocks.map(() => cut)
      : nearParts(
          cut,
          blocks.map(({ region }) => ringsBounds(region ?? cut)),
        );
  return blocks.flatMap((block, b): BlockCut[] => {
    const near = nearby[b] ?? cut;
    const part = block.region === null ? cut : partIn(near, block.region);
    const walls = byBlock[b] ?? { lengthMm: 0, exposedMm: 0 };
    const { areaMm2: wallAreaMm2, exposedMm2 } = upright?.[b] ?? {
      areaMm2: walls.lengthMm * job.depthMm,
      exposedMm2: walls.exposedMm * job.depthMm,
    };
    const floor = floors === blocks ? part : partIn(near, floors[b]?.region ?? cut);
    if (part.ringEnds.length === 0 && floor.ringEnds.length === 0 && wallAreaMm2 === 0) {
      return [];
    }
    const dive = radians(block.diveDeg);
    const floorAreaMm2 = whole > 0 ? (signedArea(floor) * carving.areaMm2) / whole : 0;
    return [
      {
        index: b,
        block,
        cut: part,
        near,
        sizes: {
          wallLengthMm: longer * walls.lengthMm,
          exposedLengthMm: walls.exposedMm * inFace(dive),
          floorAreaMm2,
          wallAreaMm2,
          wallExposedMm2: exposedMm2 * inFace(dive),
          floorExposedMm2: floorAreaMm2 * Math.sin(dive),
          ...carved?.[b],
        },
      },
    ];
  });
}

/** Upright walls of a block, mm²; the exposure is that of fibres in the face. */
interface UprightWalls {
  readonly areaMm2: number;
  readonly exposedMm2: number;
}

/** Walls by block where resin of earlier rounds stands beside the wood, layer by layer; `null` where there is none. */
function uprightWalls(
  cut: CleanRegion,
  board: readonly PlacedBlock[],
  filled: readonly FilledPocket[],
  depthMm: number,
): readonly UprightWalls[] | null {
  if (filled.length === 0) {
    return null;
  }
  const layers = slabsOf(filled, depthMm).map(({ fromMm, toMm }) => ({
    heightMm: toMm - fromMm,
    walls: blockWalls(cut, woodAt(board, filled, (fromMm + toMm) / 2, cut)),
  }));
  const sum = (b: number, of: (walls: BlockWalls) => number): number =>
    layers.reduce((total, { heightMm, walls }) => {
      const here = walls[b];
      return here === undefined ? total : total + heightMm * of(here);
    }, 0);
  return board.map((_, b) => ({
    areaMm2: sum(b, ({ lengthMm }) => lengthMm),
    exposedMm2: sum(b, ({ exposedMm }) => exposedMm),
  }));
}

/** Surfaces of a cut of any shape: walls in the wood at the face, floors in the wood at their depth. */
function carvedIn(
  carving: Carving,
  cut: CleanRegion,
  { blocks, floors, stages }: Surroundings,
): readonly CarvedExposure[] {
  const walls = exposureIn(carving, cut, blocks, stages);
  return floors === blocks
    ? walls
    : exposureIn(carving, cut, floors, stages).map(({ floorAreaMm2, floorExposedMm2 }, b) => ({
        wallAreaMm2: 0,
        wallExposedMm2: 0,
        ...walls[b],
        floorAreaMm2,
        floorExposedMm2,
      }));
}

/** Surfaces depend on where blocks lie and how their fibres run, whatever wood they are. */
function exposureIn(
  carving: Carving,
  cut: CleanRegion,
  blocks: readonly PlacedBlock[],
  stages: Stages,
): readonly CarvedExposure[] {
  const fibres = blocks.map(({ grainDeg, diveDeg }) => [grainDeg, diveDeg]);
  return stages.of('surfaces', [carving, cut, ...blocks.map(({ region }) => region)], fibres, () =>
    carvedExposure(carving, cut, blocks, stages),
  );
}

/** Makes something when it is first asked for. */
function once<T>(make: () => T): () => T {
  let made: { readonly it: T } | null = null;
  return () => {
    made ??= { it: make() };
    return made.it;
  };
}

function partIn(near: CleanRegion, block: CleanRegion): CleanRegion {
  return near.ringEnds.length === 0 ? near : booleans(near, block, 'intersect');
}

/** Cosine of a vertical fibre, to rounding: cos(π/2) is 6e-17. */
const UPRIGHT_TOL = 1e-12;

/** The fibre's component in the face; exactly 0 for a vertical fibre. */
export function inFace(diveRad: number): number {
  const part = Math.cos(diveRad);
  return Math.abs(part) < UPRIGHT_TOL ? 0 : part;
}

/**
 * Colour travel in a block under the job's seal and resin, or under another seal, calibrated by the job's
 * coupons.
 */
export function travelIn(
  { row, part }: Pick<PlacedBlock, 'row' | 'part'>,
  job: Job,
  seal: Partial<Pick<BleedJob, 'seal' | 'coats' | 'sealHours'>> = {},
  stages: Stages = new Stages(),
): CalibratedTravel {
  const bleed = {
    wood: row,
    part,
    seal: job.rows.seal,
    coats: job.coats,
    sealHours: job.sealHours,
    resin: job.rows.resin,
    temperatureC: job.shopTempC,
    spreadBetween: job.boardSpread,
    ...seal,
  };
  return stages.of('travel', [], { bleed, coupons: job.coupons }, () => calibratedTravel(bleed, job.coupons));
}

function joined(region: CleanRegion, bands: readonly (readonly number[])[]): CleanRegion {
  const whole = { ...region, fillRule: 'nonzero' as const };
  return resolveRegions([whole, { ...packRings(bands), fillRule: 'nonzero' }]).region;
}

/** A block with what is cut of it. */
type CutInBlock = Pick<BlockMeasures, 'cut' | 'near' | 'block' | 'travel'>;

function bleedIn(inBlock: CutInBlock): Pick<BlockMeasures, 'bleed' | 'bleedAreas'> {
  const { cut, near, block, travel } = inBlock;
  const [low, median, high] = [travel.lowMm, travel.medianMm, travel.highMm].map((travelMm) =>
    once(() => bledRegion(inBlock, travelMm)),
  ) as [() => CleanRegion, () => CleanRegion, () => CleanRegion];
  const bleed = {
    get low() {
      return low();
    },
    get median() {
      return median();
    },
    get high() {
      return high();
    },
  };
  const areas = (stages: Stages): BleedReach<number> => {
    // the wood behind a wall along a joint is the block's, though no part of the cut in it bounds it
    if (block.region !== null && !onlyCrosses(near, block.region)) {
      return {
        low: signedArea(bleed.low),
        median: signedArea(bleed.median),
        high: signedArea(bleed.high),
      };
    }
    const reach = inFace(radians(block.diveDeg));
    const wood = woodBeside(cut, block, stages);
    const area = (travelMm: number): number => sweptArea(wood, travelMm * reach);
    return { low: area(travel.lowMm), median: area(travel.medianMm), high: area(travel.highMm) };
  };
  return { bleed, bleedAreas: areas };
}

/** The wood of a block between the walls of a cut, along its fibres. */
export function woodBeside(
  cut: CleanRegion,
  { region, grainDeg }: Pick<PlacedBlock, 'region' | 'grainDeg'>,
  stages: Stages,
): WoodAlong {
  return stages.of('wood-gaps', [cut, region], { grainDeg }, () =>
    woodAlong(cut, radians(grainDeg), region ?? undefined),
  );
}

/** Part of a block's face that colour reaches, less what is cut, and no farther than the block's edge. */
function bledRegion({ cut, near, block }: CutInBlock, travelMm: number): CleanRegion {
  const reachMm = travelMm * inFace(radians(block.diveDeg));
  const { region } = sweepAlong(cut, radians(block.grainDeg), reachMm);
  if (block.region === null) {
    return region;
  }
  const [fx, fy] = fibreVector(radians(block.grainDeg));
  const bands = jointBands(near, block.region, [fx * reachMm, fy * reachMm]);
  const all = bands.length === 0 ? region : joined(region, bands);
  // a glue line stops colour, and what the cut took from the neighbouring block is not wood
  return booleans(booleans(all, block.region, 'intersect'), near, 'subtract');
}
