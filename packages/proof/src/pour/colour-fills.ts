import { booleans, outerRingCount, resolveRegions } from '@pourproof/geometry';
import { limits, sealFilm } from '@pourproof/materials';
import { type CleanRegion, type Drawing, perimeter, type Region, signedArea } from '@pourproof/plane';
import type { Job } from '../job/job.ts';
import { type FillMeasures, fillBudget } from './fill-budget.ts';
import type { ColourFill } from './pour-plan.ts';

/** How far the depth of a pocket is off after setting the bit on the face, mm (our choice; measured flatness comes on top). */
const DEPTH_SETTING_MM = 0.1;

/** The cut to be filled, in mm and mm². */
export interface FilledCut {
  readonly job: Job;
  readonly drawing: Drawing;
  readonly cutRegion: CleanRegion;
  /** Area of the cut with its true arcs. */
  readonly cutArea: number;
  readonly wallLength: number;
  /** Most that end grain may drink, ml. */
  readonly uptakeMl: number;
}

/**
 * The fills of a proof: one per colour of the drawing, or a single one named `all`.
 *
 * Where colours overlap the one drawn later is poured, as paint covers paint; the colours share out the cut without rest.
 */
export function colourFills(filled: FilledCut): readonly ColourFill[] {
  const colours = regionsByColour(filled);
  if (colours.size <= 1) {
    return [fillOf('all', filled, filled.cutRegion)];
  }
  let rest = filled.cutRegion;
  const fills: ColourFill[] = [];
  for (const [name, regions] of [...colours].toReversed()) {
    const { region } = resolveRegions(regions);
    fills.push(fillOf(name, filled, booleans(rest, region, 'intersect')));
    rest = booleans(rest, region, 'subtract');
  }
  return fills.reverse();
}

/** Shapes by colour, in the order in which each colour is painted last. */
function regionsByColour(filled: FilledCut): ReadonlyMap<string, readonly Region[]> {
  const colours = new Map<string, Region[]>();
  for (const { colour, region } of filled.drawing.shapes) {
    const regions = colours.get(colour) ?? [];
    colours.delete(colour);
    colours.set(colour, [...regions, region]);
  }
  return colours;
}

function fillOf(name: string, filled: FilledCut, part: CleanRegion): ColourFill {
  const { job, cutArea, cutRegion, wallLength } = filled;
  const whole = signedArea(cutRegion);
  const share = whole > 0 ? signedArea(part) / whole : 0;
  const wallShare = wallLength > 0 ? Math.min(1, perimeter(part) / wallLength) : 0;
  const areaMm2 = cutArea * share;
  const budgeted: FillMeasures = {
    cutAreaMm2: areaMm2,
    volumeMm3: areaMm2 * job.depthMm,
    wallAreaMm2: wallLength * wallShare * job.depthMm,
    volumeErrorMm3: job.toleranceMm * wallLength * wallShare * job.depthMm,
    depthErrorMm: DEPTH_SETTING_MM,
    film: sealFilm(job.rows.seal, job.coats),
    overpourMm: job.overpourMm,
    overpourRange: limits.overpour,
    uptakeMl: share * filled.uptakeMl,
    shrinkagePct: job.rows.resin.shrinkagePct,
  };
  return { name, budget: fillBudget(budgeted), pockets: outerRingCount(part), depthMm: job.depthMm };
}
