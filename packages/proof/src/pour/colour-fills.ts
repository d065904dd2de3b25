import { outerRingCount } from '@pourproof/arrangement';
import type { Carving } from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import type { Bit, Job } from '@pourproof/job';
import { limits, sealFilm } from '@pourproof/materials';
import { type CleanRegion, perimeter, signedArea } from '@pourproof/plane';
import type { ColourCut } from '../colours/colour-cuts.ts';
import type { CutShape } from '../cut/cut-shape.ts';
import { carveJob } from '../cut/measure-cut.ts';
import type { ResinContact } from '../rounds/filled-pockets.ts';
import type { Site } from '../rounds/site.ts';
import type { Stages } from '../stages/stages.ts';
import { type FillMeasures, fillBudget } from './fill-budget.ts';
import type { ColourFill } from './pour-plan.ts';

/**
 * Error of a pocket's depth after setting the bit on the face, mm (our choice; measured flatness comes on
 * top).
 */
const DEPTH_SETTING_MM = 0.1;
/**
 * Colours whose own cuts add up to the whole within this share do not touch (our choice: far below the
 * accuracy of filling a cup).
 */
const APART_REL_TOL = 1e-3;

/** The cut to be filled, in mm and mm². */
export interface FilledCut {
  readonly job: Job;
  readonly colourCuts: readonly ColourCut[];
  readonly site: Pick<Site, 'colours'>;
  /** The rest of its surfaces is sealed. */
  readonly contact: ResinContact;
  readonly cutRegion: CleanRegion;
  readonly carving: Carving;
  readonly shape: CutShape;
  /** Greatest depth of the cut. */
  readonly maxDepth: number;
  readonly wallLength: number;
  /** Upper bound on what end grain takes up, ml. */
  readonly uptakeMl: number;
  /** The bits as they enter the artwork. */
  readonly bits: readonly Bit[];
  readonly stages: Stages;
}

/** The part of the cut in one colour. */
interface ColourPart {
  readonly name: string;
  readonly resin: string | null;
  readonly region: CleanRegion;
  readonly area: number;
  readonly volume: number;
  readonly wall: number;
  /** Its greatest depth, mm: a V is shallower in narrow strokes. */
  readonly depthMm: number;
}

/**
 * The fills of a job: one per colour of the drawing, or a single one named `all`.
 *
 * Where colours overlap, the one drawn later is poured, as paint covers paint; together the colours take all
 * of the cut. Between upright walls the volume is divided by area. A V is shallower in narrow strokes, and a
 * ball cuts less in them, so each colour is cut by itself, and the whole is divided in proportion: exact if
 * colours do not touch. If they do, it is divided by area, save for a V.
 */
export function colourFills(filled: FilledCut): readonly ColourFill[] {
  const { job, bits, colourCuts, cutRegion, carving, maxDepth, site, stages } = filled;
  const regions = colourCuts.flatMap(({ cut, drawn }) => [cut, drawn]);
  const names = colourCuts.map(({ colour: { name, resin } }) => [name, resin]);
  const reads = { bits, depthMm: job.depthMm, names, maxDepth, isWhole: site.colours === null };
  const parts = stages.of('fills', [cutRegion, carving, ...regions], reads, () => partsOf(filled));
  const sum = (of: (part: ColourPart) => number): number =>
    parts.reduce((total, part) => total + of(part), 0);
  const whole = {
    area: sum((part) => part.area),
    volume: sum((part) => part.volume),
    wall: sum((part) => part.wall),
  };
  return parts.map((part) => fillOf(part, whole, filled));
}

function partsOf(filled: FilledCut): readonly ColourPart[] {
  const { job, bits } = filled;
  const isSloped = bits.some((bit) => bit.kind !== 'flat');
  const partOf = (
    name: string,
    resin: string | null,
    region: CleanRegion,
    drawn: CleanRegion | null,
  ): ColourPart => {
    const own = isSloped && drawn !== null ? carveJob(medialAxis(drawn), { ...job, bits }) : null;
    const area = signedArea(region);
    return {
      name,
      resin,
      region,
      area,
      volume: own?.volumeMm3 ?? area,
      wall: own?.wallAreaMm2 ?? perimeter(region),
      depthMm: own === null ? filled.maxDepth : own.maxDepthMm,
    };
  };
  const [only, second] = filled.colourCuts;
  if (second === undefined) {
    // one of several colours of a drawing keeps its name
    const name = filled.site.colours === null ? 'all' : (only?.colour.name ?? 'all');
    return [partOf(name, only?.colour.resin ?? null, filled.cutRegion, null)];
  }
  const parts = filled.colourCuts.map(({ colour, cut, drawn }) =>
    partOf(colour.name, colour.resin, cut, drawn),
  );
  const apart = parts.reduce((sum, { volume }) => sum + volume, 0);
  const { volumeMm3 } = filled.carving;
  // a V at least enters each colour; another bit may not even enter a colour that touches the next
  const isByOwnCut =
    bits.some((bit) => bit.kind === 'vee') || Math.abs(apart - volumeMm3) <= APART_REL_TOL * volumeMm3;
  return isByOwnCut ? parts : parts.map((part) => byArea(part, filled.maxDepth));
}

function byArea(part: ColourPart, depthMm: number): ColourPart {
  return { ...part, volume: part.area, wall: perimeter(part.region), depthMm };
}

function fillOf(
  part: ColourPart,
  whole: { readonly area: number; readonly volume: number; readonly wall: number },
  { job, carving, maxDepth, wallLength, uptakeMl, contact }: FilledCut,
): ColourFill {
  const share = shareOf(part.area, whole.area);
  const volumeShare = shareOf(part.volume, whole.volume);
  const wallShare = shareOf(part.wall, whole.wall);
  const wallAreaMm2 = carving.wallAreaMm2 * wallShare;
  const measures: FillMeasures = {
    cutAreaMm2: carving.areaMm2 * share,
    volumeMm3: carving.volumeMm3 * volumeShare,
    // a V has hardly any floor: what it has is divided by area at the face
    sealedMm2: carving.floorAreaMm2 * share * (1 - contact.floor) + wallAreaMm2 * (1 - contact.wall),
    volumeErrorMm3:
      carving.volumeErrorMm3 * volumeShare + job.toleranceMm * wallLength * wallShare * maxDepth,
    depthErrorMm: DEPTH_SETTING_MM,
    film: sealFilm(job.rows.seal, job.coats),
    overpourMm: job.overpourMm,
    overpourRange: limits.overpour,
    uptakeMl: share * uptakeMl,
    shrinkagePct: job.rows.resin.shrinkagePct,
  };
  return {
    name: part.name,
    resin: part.resin,
    budget: fillBudget(measures),
    pockets: outerRingCount(part.region),
    depthMm: part.depthMm,
  };
}

function shareOf(part: number, whole: number): number {
  return whole > 0 ? part / whole : 0;
}
