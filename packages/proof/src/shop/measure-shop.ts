import type { Job } from '@pourproof/job';
import { endGrainUptakeMl, sealFilm } from '@pourproof/materials';
import type { Bounds, CleanRegion, Point } from '@pourproof/plane';
import { type BlockMeasures, blockMeasures } from '../board/block-measures.ts';
import { boundsOrZero } from '../board/bounds-or-zero.ts';
import { type FaceHeights, faceHeights } from '../board/face-heights.ts';
import { type PlacedBoard, placeBoard } from '../board/place-board.ts';
import type { ColourCut } from '../colours/colour-cuts.ts';
import type { CutMeasures } from '../cut/measure-cut.ts';
import { cutLevellingMap, marginsOfCut } from '../levelling/cut-levelling-map.ts';
import type { LevellingMap } from '../levelling/levelling-map.ts';
import { type LevellingPlan, levellingPlan } from '../levelling/levelling-plan.ts';
import { type StrokeSection, sectionWidth } from '../levelling/stroke-section.ts';
import { colourFills } from '../pour/colour-fills.ts';
import { type PourPlan, pourPlan } from '../pour/pour-plan.ts';
import { type ResinContact, resinAt } from '../rounds/filled-pockets.ts';
import type { Site } from '../rounds/site.ts';
import { planSchedule, type ScheduleStep } from '../schedule/plan-schedule.ts';
import type { Slivers } from '../slivers/find-slivers.ts';
import { roundSlivers } from '../slivers/round-slivers.ts';
import type { Stages } from '../stages/stages.ts';

/** What wood, seal, resin and levelling make of a cut. Lengths in mm. */
export interface ShopMeasures {
  /** The board under the artwork. */
  readonly board: PlacedBoard;
  /** What the cut does in each block that it meets. */
  readonly blocks: readonly BlockMeasures[];
  /** Film that the seal coat leaves on walls and floor. */
  readonly sealFilm: number;
  /** `null` where the board was not measured. */
  readonly heights: FaceHeights | null;
  readonly levelling: LevellingPlan;
  /** Every stroke by how much levelling it stands. */
  readonly levellingMap: LevellingMap;
  readonly slivers: Slivers;
  /** What to weigh, in how many cups and layers. */
  readonly pour: PourPlan;
  readonly schedule: () => readonly ScheduleStep[];
}

/** A cut with the drawing and the job that it comes from. */
export interface CutOfJob extends CutMeasures {
  readonly job: Job;
  readonly artwork: CleanRegion;
  readonly colourCuts: readonly ColourCut[];
  readonly site: Site;
  readonly contact: ResinContact;
  readonly stages: Stages;
}

/** Measures what happens to a cut on the board and at the bench. */
export function measureShop(cut: CutOfJob): ShopMeasures {
  const { job, artwork, cutRegion, site, stages } = cut;
  const bounds = site.boundsMm ?? boundsOrZero(artwork);
  const board = placedBoard(job, bounds, stages);
  const blocks = blockMeasures(cut, job, board.blocks, site.filled, stages);
  const pour = pourOf(cut, blocks);
  const levelled = { region: site.artwork ?? artwork, byMm: site.loweredMm };
  const heights = stages.of(
    'heights',
    [cutRegion, board, levelled.region],
    { readings: job.readings, bounds, byMm: levelled.byMm },
    () => faceHeights(cutRegion, middleOf(bounds), board, job.readings, levelled),
  );
  const filmMm = sealFilm(job.rows.seal, job.coats).filmMm;
  const levellingMap = levellingOf({ ...cut, filmMm, heights });
  const levelling = levellingPlan(levellingMap, { ...cut, filmMm }, cut.strokes);
  return {
    board,
    blocks,
    sealFilm: filmMm,
    heights,
    levelling,
    levellingMap,
    slivers: sliversOf(cut, board, narrowerHalfWay(cut.shape.sectionAt(levelling.narrowestMm))),
    pour,
    schedule: () => scheduleOf(cut, pour),
  };
}

/** Rows of a materials file that is read anew are others, though they say the same: coupons are told apart by them. */
function placedBoard(job: Job, bounds: Bounds, stages: Stages): PlacedBoard {
  const { board, placeMm, turnDeg, grainDeg, diveDeg, rows, materials } = job;
  const woods =
    board === null ? [rows.wood] : [...new Set(board.blocks.map(({ wood }) => materials.woods[wood]))];
  const reads = board === null ? { grainDeg, diveDeg } : { board, placeMm, turnDeg, bounds };
  return stages.of('board', woods, reads, () => placeBoard(job, bounds));
}

function levellingOf(cut: Parameters<typeof cutLevellingMap>[0] & CutOfJob): LevellingMap {
  const { axis, job, colourCuts, filmMm, heights, bits, stages } = cut;
  const { depthMm, levelMm, toleranceMm, rows } = job;
  const shape = { bits, depthMm, toleranceMm, filmMm, shrinkage: rows.resin.shrinkagePct };
  const margins = stages.of('margins', [axis, heights], shape, () => marginsOfCut(cut));
  const resins = colourCuts.map(({ colour: { resin, lab, colourant } }) => ({ resin, lab, colourant }));
  const from = [margins, ...colourCuts.map((each) => each.cut)];
  return stages.of('levelling', from, { levelMm, resins }, () => cutLevellingMap(cut, margins));
}

function sliversOf(cut: CutOfJob, board: PlacedBoard, gainMm: number): Slivers {
  const { cutRegion, site, stages, maxDepth: depthMm } = cut;
  const earlier = site.filled.map((pocket) => pocket.carving);
  const lowered = site.filled.map(({ loweredMm, toleranceMm }) => ({ loweredMm, toleranceMm }));
  // wood is thin for where its fibres run, whatever wood it is
  const regions = board.blocks.map(({ region }) => region);
  const fibres = board.blocks.map(({ grainDeg, diveDeg }) => [grainDeg, diveDeg]);
  return stages.of('slivers', [cutRegion, ...regions, ...earlier], { depthMm, gainMm, lowered, fibres }, () =>
    roundSlivers(cutRegion, { depthMm, gainMm }, board.blocks, resinAt(site.filled, 0), stages),
  );
}

/** The resin that the cut takes, with what open end grain drinks. */
function pourOf(cut: CutOfJob, blocks: readonly BlockMeasures[]): PourPlan {
  const { job } = cut;
  const uptakeMl = blocks.reduce(
    (sum, each) => sum + endGrainUptakeMl(each.wallExposedMm2 + each.floorExposedMm2, each.travel.medianMm),
    0,
  );
  return pourPlan(colourFills({ ...cut, uptakeMl }), {
    ...job,
    resin: job.rows.resin,
    scale: job.rows.scale,
  });
}

function scheduleOf({ job, efforts }: CutOfJob, pour: PourPlan): readonly ScheduleStep[] {
  return planSchedule({
    ...job.rows,
    cuttingMinutes: job.boards * efforts().bits.reduce((sum, { minutes }) => sum + minutes, 0),
    coats: job.coats,
    sealHours: job.sealHours,
    layers: pour.layers.count,
    temperatureC: job.shopTempC,
  });
}

/** How much narrower a groove is half way down than at the face, mm; 0 where there is none. */
function narrowerHalfWay(section: StrokeSection | null): number {
  return section === null ? 0 : section.widthMm - sectionWidth(section, section.depthMm / 2);
}

function middleOf([left, top, right, bottom]: Bounds): Point {
  return [(left + right) / 2, (top + bottom) / 2];
}
