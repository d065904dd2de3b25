import {
  type ArcRings,
  leftStanding,
  type MedialAxis,
  medialAxis,
  type NarrowStretch,
  narrowStretches,
  openedArea,
  openedOutline,
  polygonFromArcs,
  type Resolved,
  resolveRegions,
  type StandingPiece,
  type StrokeWidths,
  strokeWidths,
} from '@pourproof/geometry';
import { endGrainUptakeMl, sealFilm } from '@pourproof/materials';
import {
  type CleanRegion,
  type Drawing,
  invariant,
  type Point,
  perimeter,
  type Rings,
  ringsBounds,
  signedArea,
} from '@pourproof/plane';
import { type BlockMeasures, blockMeasures } from './board/block-measures.ts';
import { type FaceHeights, faceHeights } from './board/face-heights.ts';
import { type PlacedBoard, placeBoard } from './board/place-board.ts';
import { widestMm } from './job/bit.ts';
import type { Job } from './job/job.ts';
import { type LevellingPlan, levellingPlan } from './levelling/levelling-plan.ts';
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
  /** Smallest diameter among the bits: what it can't enter, none can. */
  readonly bitMm: number;
  /** Areas that the bits reach, in their order: each adds to what those before it took. */
  readonly addedAreas: readonly number[];
  readonly cutOutline: ArcRings;
  /** The cut outline with arcs flattened within the job's tolerance. */
  readonly cut: Rings;
  /** The same as a clean region. */
  readonly cutRegion: CleanRegion;
  readonly cutArea: number;
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
  | 'bitMm'
  | 'addedAreas'
  | 'cutOutline'
  | 'cut'
  | 'cutRegion'
  | 'cutArea'
  | 'wallLength'
  | 'standing'
  | 'strokes'
  | 'narrowerThan'
>;

function measureCut(artwork: CleanRegion, job: Job): CutPart {
  const axis = medialAxis(artwork);
  const diameters = job.bits.map(widestMm);
  const bitMm = Math.min(...diameters);
  invariant(Number.isFinite(bitMm), 'a settled job has at least one bit');
  const cutOutline = openedOutline(axis, bitMm / 2);
  const cut = polygonFromArcs(cutOutline, job.toleranceMm);
  return {
    axis,
    bitMm,
    addedAreas: addedAreas(axis, diameters),
    cutOutline,
    cut,
    cutRegion: resolveRegions([{ ...cut, fillRule: 'nonzero' }]).region,
    cutArea: openedArea(axis, bitMm / 2),
    wallLength: perimeter(cut),
    standing: leftStanding(axis, bitMm / 2, job.toleranceMm),
    strokes: strokeWidths(axis),
    narrowerThan: (widthMm) => narrowStretches(axis, widthMm),
  };
}

type ShopPart = Pick<
  Measured,
  'board' | 'blocks' | 'sealFilm' | 'heights' | 'levelling' | 'slivers' | 'pour' | 'schedule'
>;

/** What wood, seal, resin and levelling make of the cut. */
function measureShop(base: Omit<Measured, keyof ShopPart>): ShopPart {
  const { job, artwork, cutRegion } = base;
  const board = placeBoard(job, artwork.ringEnds.length === 0 ? [0, 0, 0, 0] : ringsBounds(artwork));
  const blocks = blockMeasures(cutRegion, base.cutArea, job, board.blocks);
  const uptakeMl = blocks.reduce(
    (sum, each) => sum + endGrainUptakeMl(each.wallExposedMm2 + each.floorExposedMm2, each.travel.medianMm),
    0,
  );
  const pour = pourPlan(colourFills({ ...base, uptakeMl }), {
    ...job,
    resin: job.rows.resin,
    scale: job.rows.scale,
  });
  const heights = faceHeights(cutRegion, middleOf(artwork), board, job.readings);
  const film = sealFilm(job.rows.seal, job.coats).filmMm;
  return {
    board,
    blocks,
    sealFilm: film,
    heights,
    levelling: levellingPlan(
      {
        depthMm: job.depthMm,
        levelMm: job.levelMm,
        filmMm: film,
        shrinkagePct: job.rows.resin.shrinkagePct.value,
        shallowByMm: Math.max(0, -(heights?.lowestMm ?? 0)),
        bitMm: base.bitMm,
      },
      base.strokes,
    ),
    slivers: findSlivers(cutRegion, job.depthMm, board.blocks),
    pour,
    schedule: planSchedule({
      ...job.rows,
      coats: job.coats,
      sealHours: job.sealHours,
      lifts: pour.lifts.count,
      temperatureC: job.shopTempC,
    }),
  };
}

/** The smallest bit's cut holds every larger one's, so each bit adds the growth of the largest area so far. */
function addedAreas(axis: MedialAxis, diameters: readonly number[]): readonly number[] {
  let taken = 0;
  return diameters.map((diameter) => {
    const area = openedArea(axis, diameter / 2);
    const added = Math.max(0, area - taken);
    taken = Math.max(taken, area);
    return added;
  });
}

function middleOf(artwork: CleanRegion): Point {
  const [left, top, right, bottom] = artwork.ringEnds.length === 0 ? [0, 0, 0, 0] : ringsBounds(artwork);
  return [(left + right) / 2, (top + bottom) / 2];
}
