import { type Resolved, resolveRegions } from '@pourproof/arrangement';
import { type Carving, carve } from '@pourproof/cutting';
import {
  leftStanding,
  type MedialAxis,
  medialAxis,
  type NarrowStretch,
  narrowStretches,
  polygonFromArcs,
  type StandingPiece,
  type StrokeWidths,
  strokeWidths,
} from '@pourproof/geometry';
import type { Job } from '@pourproof/job';
import { endGrainUptakeMl, sealFilm } from '@pourproof/materials';
import {
  type CleanRegion,
  type Drawing,
  type Point,
  perimeter,
  type Rings,
  ringsBounds,
  signedArea,
} from '@pourproof/plane';
import { type BlockMeasures, blockMeasures } from './board/block-measures.ts';
import { type FaceHeights, faceHeights } from './board/face-heights.ts';
import { type PlacedBoard, placeBoard } from './board/place-board.ts';
import { bitEfforts, type Efforts } from './cut/bit-efforts.ts';
import { type CutShape, cutShape } from './cut/cut-shape.ts';
import { cutterOf } from './cut/cutter-of.ts';
import { deepestOfCut } from './cut/deepest-of-cut.ts';
import { cutLevellingMap } from './levelling/cut-levelling-map.ts';
import type { LevellingMap } from './levelling/levelling-map.ts';
import { type LevellingPlan, levellingPlan } from './levelling/levelling-plan.ts';
import { type StrokeSection, sectionWidth } from './levelling/stroke-section.ts';
import { colourFills } from './pour/colour-fills.ts';
import { type PourPlan, pourPlan } from './pour/pour-plan.ts';
import { planSchedule, type ScheduleStep } from './schedule/plan-schedule.ts';
import { findSlivers, type Slivers } from './slivers/find-slivers.ts';

/** Everything that the checks look at, measured once. Lengths in mm, areas in mm², volumes in mm³. */
export interface Measured {
  readonly job: Job;
  readonly drawing: Drawing;
  readonly resolved: Resolved;
  readonly artwork: CleanRegion;
  readonly artworkArea: number;
  readonly artworkPerimeter: number;
  readonly axis: MedialAxis;
  /** What the bits make of a stroke of any width. */
  readonly shape: CutShape;
  /** What the bits remove together. */
  readonly carving: Carving;
  /** How far the bits go and how long that takes. */
  readonly efforts: Efforts;
  /** Narrowest stroke that any bit enters at this depth; 0 for a V that comes to a point. */
  readonly bitMm: number;
  /** The outline of the cut at the face, arcs flattened within the job's tolerance. */
  readonly cut: Rings;
  /** The same as a clean region. */
  readonly cutRegion: CleanRegion;
  readonly cutArea: number;
  /** Deepest that the cut really gets: a V stays shallower where no stroke is wide enough. */
  readonly maxDepth: number;
  readonly wallLength: number;
  readonly standing: readonly StandingPiece[];
  readonly strokes: StrokeWidths;
  /** Stretches of stroke narrower than the given width. */
  readonly narrowerThan: (widthMm: number) => readonly NarrowStretch[];
  /** The board under the artwork. */
  readonly board: PlacedBoard;
  /** What the cut does in each block that it meets. */
  readonly blocks: readonly BlockMeasures[];
  /** Film that the seal coat leaves on walls and floor, mm. */
  readonly sealFilm: number;
  /** `null` where the board was not measured. */
  readonly heights: FaceHeights | null;
  readonly levelling: LevellingPlan;
  /** Every stroke by how much levelling it stands. */
  readonly levellingMap: LevellingMap;
  readonly slivers: Slivers;
  /** What to weigh, in how many cups and lifts. */
  readonly pour: PourPlan;
  readonly schedule: readonly ScheduleStep[];
}

/** Measures a drawing for a job, once for all checks. */
export function measure(drawing: Drawing, job: Job): Measured {
  const resolved = resolveRegions(drawing.shapes.map((shape) => shape.region));
  const artwork = resolved.region;
  const cutMeasures = measureCut(artwork, job);
  const base = {
    job,
    drawing,
    resolved,
    artwork,
    artworkArea: signedArea(artwork),
    artworkPerimeter: perimeter(artwork),
    ...cutMeasures,
  };
  return { ...base, ...measureShop(base) };
}

type CutPart = Pick<
  Measured,
  | 'axis'
  | 'shape'
  | 'carving'
  | 'efforts'
  | 'bitMm'
  | 'cut'
  | 'cutRegion'
  | 'cutArea'
  | 'maxDepth'
  | 'wallLength'
  | 'standing'
  | 'strokes'
  | 'narrowerThan'
>;

function measureCut(artwork: CleanRegion, job: Job): CutPart {
  const axis = medialAxis(artwork);
  const shape = cutShape(job.bits, job.depthMm);
  const carving = carveJob(axis, job);
  const cut = polygonFromArcs(carving.outline, job.toleranceMm);
  return {
    axis,
    shape,
    carving,
    efforts: bitEfforts(axis, carving, job),
    bitMm: shape.entersMm,
    cut,
    cutRegion: resolveRegions([{ ...cut, fillRule: 'nonzero' }]).region,
    cutArea: carving.areaMm2,
    maxDepth: deepestOfCut(carving, shape),
    wallLength: perimeter(cut),
    standing: shape.entersMm > 0 ? leftStanding(axis, shape.entersMm / 2, job.toleranceMm).pieces : [],
    strokes: strokeWidths(axis),
    narrowerThan: (widthMm) => narrowStretches(axis, widthMm),
  };
}

/** What a job's bits remove: a V follows the artwork's edge, others clear at full depth. */
function carveJob(axis: MedialAxis, { bits, depthMm }: Job): Carving {
  const steps = bits.map((bit) => ({
    cutter: cutterOf(bit),
    way: bit.kind === 'vee' ? ('follow' as const) : ('clear' as const),
  }));
  return carve(axis, steps, { depthMm });
}

type ShopPart = Pick<
  Measured,
  'board' | 'blocks' | 'sealFilm' | 'heights' | 'levelling' | 'levellingMap' | 'slivers' | 'pour' | 'schedule'
>;

/** What wood, seal, resin and levelling make of the cut. */
function measureShop(base: Omit<Measured, keyof ShopPart>): ShopPart {
  const { job, artwork, cutRegion } = base;
  const board = placeBoard(job, artwork.ringEnds.length === 0 ? [0, 0, 0, 0] : ringsBounds(artwork));
  const blocks = blockMeasures(cutRegion, base.carving, job, board.blocks);
  const uptakeMl = blocks.reduce(
    (sum, each) => sum + endGrainUptakeMl(each.wallExposedMm2 + each.floorExposedMm2, each.travel.medianMm),
    0,
  );
  const pour = pourPlan(
    colourFills({ ...base, uptakeMl, carvePart: (part) => carveJob(medialAxis(part), job) }),
    {
      ...job,
      resin: job.rows.resin,
      scale: job.rows.scale,
    },
  );
  const heights = faceHeights(cutRegion, middleOf(artwork), board, job.readings);
  const film = sealFilm(job.rows.seal, job.coats).filmMm;
  const levelling = levellingPlan(
    {
      shape: base.shape,
      levelMm: job.levelMm,
      filmMm: film,
      shrinkagePct: job.rows.resin.shrinkagePct.value,
      shallowByMm: Math.max(0, -(heights?.lowestMm ?? 0)),
    },
    base.strokes,
  );
  const map = cutLevellingMap({ ...base, filmMm: film, heights });
  return {
    board,
    blocks,
    sealFilm: film,
    heights,
    // where a stroke narrower than the bit is not cut, the map knows the first that is
    levelling:
      levelling.firstLostAt === null
        ? levelling
        : { ...levelling, firstLostAt: map.goesFirstAt ?? levelling.firstLostAt },
    levellingMap: map,
    slivers: findSlivers(
      cutRegion,
      { depthMm: base.maxDepth, gainMm: narrowerHalfWay(base.shape.sectionAt(levelling.narrowestMm)) },
      board.blocks,
    ),
    pour,
    schedule: planSchedule({
      ...job.rows,
      cuttingMinutes: job.boards * base.efforts.bits.reduce((sum, { minutes }) => sum + minutes, 0),
      coats: job.coats,
      sealHours: job.sealHours,
      lifts: pour.lifts.count,
      temperatureC: job.shopTempC,
    }),
  };
}

/** How much narrower a groove is half way down than at the face, mm; 0 where there is none. */
function narrowerHalfWay(section: StrokeSection | null): number {
  return section === null ? 0 : section.widthMm - sectionWidth(section, section.depthMm / 2);
}

function middleOf(artwork: CleanRegion): Point {
  const [left, top, right, bottom] = artwork.ringEnds.length === 0 ? [0, 0, 0, 0] : ringsBounds(artwork);
  return [(left + right) / 2, (top + bottom) / 2];
}
