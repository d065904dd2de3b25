import { booleans, resolveRegions } from '@pourproof/arrangement';
import type { Carving } from '@pourproof/cutting';
import { polygonFromArcs } from '@pourproof/geometry';
import { type CleanRegion, packRings, perimeter, ringsBounds, signedArea } from '@pourproof/plane';
import { blockWalls } from '../board/block-walls.ts';
import type { PlacedBlock } from '../board/place-board.ts';

/** A pocket of an earlier round, full of cured resin. Depths are mm below the face as it is now. */
export interface FilledPocket {
  readonly carving: Carving;
  /** How much has come off its face since it was carved. */
  readonly loweredMm: number;
  /** Whether its walls are upright, so that it is the same at every depth. */
  readonly isUpright: boolean;
  readonly toleranceMm: number;
}

/** What of a cut stands in cured resin, as shares from 0 to 1. */
export interface ResinContact {
  readonly wall: number;
  readonly floor: number;
}

/** A layer of a cut in which wood and resin lie side by side in the same way; mm below the face. */
export interface Slab {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Floors nearer to each other than this are level, mm: rounding. */
const LEVEL_TOL_MM = 1e-6;
/**
 * Layers in which sloping walls of earlier pockets are taken as upright, for a cut through them (our choice). A pocket narrows downwards, so that what
 * is summed over n layers by their middles errs by no more than 1/(2 n) of what there is at the face: a sixteenth.
 */
export const SLOPED_SLABS = 8;

/** Where cured resin is at a depth; at the floor of a pocket there is none. */
export function resinAt(filled: readonly FilledPocket[], depthMm: number): CleanRegion {
  const slices = filled
    .filter(({ carving, loweredMm }) => carving.maxDepthMm - loweredMm > depthMm + LEVEL_TOL_MM)
    .map(({ carving, loweredMm, toleranceMm }) => ({
      ...polygonFromArcs(carving.sliceOutline(depthMm + loweredMm), toleranceMm),
      fillRule: 'nonzero' as const,
    }));
  return resolveRegions(slices).region;
}

/**
 * The layers of a cut of a depth, from the face down.
 *
 * @param sloped how many of them stand for sloping walls
 */
export function slabsOf(
  filled: readonly FilledPocket[],
  depthMm: number,
  sloped: number = SLOPED_SLABS,
): readonly Slab[] {
  const floors = filled.flatMap(({ carving, loweredMm, isUpright }) => [
    ...carving.perCutter.map((added) => added.depthMm - loweredMm),
    carving.maxDepthMm - loweredMm,
    ...(isUpright ? [] : Array.from({ length: sloped }, (_, k) => (k * depthMm) / sloped)),
  ]);
  const stops = [...new Set([...floors, depthMm])]
    .filter((at) => at > LEVEL_TOL_MM && at <= depthMm)
    .toSorted((a, b) => a - b);
  return stops.map((toMm, k) => ({ fromMm: stops[k - 1] ?? 0, toMm }));
}

/** The wood of blocks at a depth: what is left of them beside cured resin. */
export function woodAt(
  blocks: readonly PlacedBlock[],
  filled: readonly FilledPocket[],
  depthMm: number,
  cut: CleanRegion,
): readonly PlacedBlock[] {
  const resin = resinAt(filled, depthMm);
  if (resin.ringEnds.length === 0) {
    return blocks;
  }
  const everywhere = aroundBoth(cut, resin);
  return blocks.map((block) => ({
    ...block,
    region: booleans(block.region ?? everywhere, resin, 'subtract'),
  }));
}

/** Wood that has no edge reaches this far beyond the cut, mm: farther than any colour travels. */
const BEYOND_MM = 500;

function aroundBoth(cut: CleanRegion, resin: CleanRegion): CleanRegion {
  const boxes = [cut, resin].filter(({ ringEnds }) => ringEnds.length > 0).map(ringsBounds);
  const left = Math.min(...boxes.map(([x]) => x)) - BEYOND_MM;
  const top = Math.min(...boxes.map(([, y]) => y)) - BEYOND_MM;
  const right = Math.max(...boxes.map(([, , x]) => x)) + BEYOND_MM;
  const bottom = Math.max(...boxes.map(([, , , y]) => y)) + BEYOND_MM;
  const ring = packRings([[left, top, right, top, right, bottom, left, bottom]]);
  return resolveRegions([{ ...ring, fillRule: 'nonzero' }]).region;
}

/** How much of a cut's walls and floor is cured resin: walls taken as upright below the outline at the face. */
export function resinContact(
  cut: CleanRegion,
  depthMm: number,
  filled: readonly FilledPocket[],
  sloped: number = SLOPED_SLABS,
): ResinContact {
  const [length, area] = [perimeter(cut), signedArea(cut)];
  if (filled.length === 0 || !(length > 0 && area > 0)) {
    return { wall: 0, floor: 0 };
  }
  const wall = slabsOf(filled, depthMm, sloped).reduce((sum, { fromMm, toMm }) => {
    const region = resinAt(filled, (fromMm + toMm) / 2);
    return sum + (toMm - fromMm) * lengthBeside(cut, region);
  }, 0);
  const floor = signedArea(booleans(cut, resinAt(filled, depthMm), 'intersect'));
  return { wall: wall / (length * depthMm), floor: floor / area };
}

/** Length of the outline of a cut behind which a region lies. */
function lengthBeside(cut: CleanRegion, region: CleanRegion): number {
  if (region.ringEnds.length === 0) {
    return 0;
  }
  const [beside] = blockWalls(cut, [{ region, grainDeg: 0 }]);
  return beside?.lengthMm ?? 0;
}

/** Volume of a cut that is taken out of cured resin, mm³; never negative. */
export function resinTaken(carving: Carving, filled: readonly FilledPocket[], toleranceMm: number): number {
  const sliceAt = (depthMm: number): CleanRegion =>
    resolveRegions([{ ...polygonFromArcs(carving.sliceOutline(depthMm), toleranceMm), fillRule: 'nonzero' }])
      .region;
  const shared = (depthMm: number): number => {
    const resin = resinAt(filled, depthMm);
    const slice = sliceAt(depthMm);
    const flattened = signedArea(slice);
    // by share, so that flattened arcs make no difference to a cut that lies in resin altogether
    return resin.ringEnds.length === 0 || flattened <= 0
      ? 0
      : (carving.sliceArea(depthMm) * signedArea(booleans(slice, resin, 'intersect'))) / flattened;
  };
  const own = {
    carving,
    loweredMm: 0,
    isUpright: filled.every(({ isUpright }) => isUpright),
    toleranceMm,
  };
  return slabsOf([...filled, own], carving.maxDepthMm).reduce((sum, slab) => sum + integral(shared, slab), 0);
}

/** Nodes and weights of Gauss–Legendre's rule of two points on 0…1: exact to the third power of the depth, as between straight flanks. */
const GAUSS: readonly (readonly [node: number, weight: number])[] = [
  [0.5 - Math.sqrt(1 / 12), 0.5],
  [0.5 + Math.sqrt(1 / 12), 0.5],
];

function integral(of: (depthMm: number) => number, { fromMm, toMm }: Slab): number {
  const height = toMm - fromMm;
  return GAUSS.reduce((sum, [node, weight]) => sum + weight * height * of(fromMm + node * height), 0);
}
