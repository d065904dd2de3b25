import {
  type ArcRings,
  endGrainLength,
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
  sweepAlong,
} from '@pourproof/geometry';
import { type BleedTravel, bleedTravel, sealFilm } from '@pourproof/materials';
import {
  type CleanRegion,
  type Drawing,
  invariant,
  perimeter,
  type Rings,
  radians,
  signedArea,
} from '@pourproof/plane';
import type { Job } from './job/job.ts';
import { colourFills, type FilledCut } from './pour/colour-fills.ts';
import { type PourPlan, pourPlan } from './pour/pour-plan.ts';
import { planSchedule, type ScheduleStep } from './schedule/plan-schedule.ts';

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
  /** ∫ |n·f| ds over the cut's outline for fibres that lie in the face, mm. */
  readonly endGrainLength: number;
  readonly travel: BleedTravel;
  /** Face that colour may reach at the median travel, mm². */
  readonly bleedArea: number;
  /** Film that the seal coat leaves on walls and floor, mm. */
  readonly sealFilm: number;
  /** What to weigh, in how many cups and lifts. */
  readonly pour: PourPlan;
  readonly schedule: readonly ScheduleStep[];
}

/** Measures a drawing for a job, once for all checks. */
export function measure(drawing: Drawing, job: Job): Measured {
  const resolved = resolveRegions(drawing.shapes.map((shape) => shape.region));
  const artwork = resolved.region;
  const axis = medialAxis(artwork);
  const diameters = job.bits.map((bit) => bit.diameterMm);
  const bitMm = Math.min(...diameters);
  invariant(Number.isFinite(bitMm), 'a settled job has at least one bit');
  const cutOutline = openedOutline(axis, bitMm / 2);
  const cut = polygonFromArcs(cutOutline, job.toleranceMm);
  const grainRad = radians(job.grainDeg);
  const travel = bleedTravel({
    wood: job.rows.wood,
    seal: job.rows.seal,
    coats: job.coats,
    sealHours: job.sealHours,
    resin: job.rows.resin,
    temperatureC: job.shopTempC,
  });
  const dive = radians(job.diveDeg);
  const { region: cutRegion } = resolveRegions([{ ...cut, fillRule: 'nonzero' }]);
  const cutArea = openedArea(axis, bitMm / 2);
  const wallLength = perimeter(cut);
  const openLength = endGrainLength(cut, grainRad);
  const filled: FilledCut = {
    job,
    drawing,
    cutRegion,
    cutArea,
    wallLength,
    exposedMm2: openLength * Math.cos(dive) * job.depthMm + cutArea * Math.sin(dive),
    travelMm: travel.medianMm,
  };
  const pour = pourPlan(colourFills(filled), { ...job, resin: job.rows.resin, scale: job.rows.scale });
  return {
    job,
    drawing,
    resolved,
    artwork,
    artworkArea: signedArea(artwork),
    artworkPerimeter: perimeter(artwork),
    axis,
    bitMm,
    addedAreas: addedAreas(axis, diameters),
    cutOutline,
    cut,
    cutRegion,
    cutArea,
    wallLength,
    standing: leftStanding(axis, bitMm / 2, job.toleranceMm),
    strokes: strokeWidths(axis),
    narrowerThan: (widthMm) => narrowStretches(axis, widthMm),
    endGrainLength: openLength,
    travel,
    bleedArea: bleedArea(cutRegion, grainRad, travel.medianMm * Math.cos(dive)),
    sealFilm: sealFilm(job.rows.seal, job.coats).filmMm,
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

function bleedArea(cut: CleanRegion, grainRad: number, reachMm: number): number {
  if (cut.ringEnds.length === 0 || reachMm <= 0) {
    return 0;
  }
  return sweepAlong(cut, grainRad, reachMm).areaMm2;
}
