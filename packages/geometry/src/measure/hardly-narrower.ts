import type { Point } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { curvedEdges } from '../outline/curved-edges.ts';
import { checkRadius } from './check-radius.ts';
import { enteringRadius } from './entering-radius.ts';
import { isSecondary } from './is-secondary.ts';
import { type NarrowStretch, narrowStretchesFrom } from './narrow-stretches.ts';
import { separateParts } from './separate-parts.ts';

/** A clearance that is short by this share of the tolerance more is still short by the flattening: rounding. */
const SHORT_REL_TOL = 1e-6;

/** Strokes and dots that are hardly narrower than a cutter. */
export interface HardlyNarrower {
  /** Whether some may have been drawn as wide as the cutter, with curves for walls. */
  readonly fitsAsDrawn: boolean;
  /** The strokes that were drawn narrower: straight walls are where they were drawn. */
  readonly tooNarrow: readonly NarrowStretch[];
}

/**
 * The strokes and dots that are narrower than a cutter, by no more than curves may have been wider than their chords.
 *
 * A curved wall lies within `toleranceMm` of its chords, a straight one on them. So the disc between two walls may have been drawn larger
 * by half of what both of them are uncertain by: the tolerance between two curves, half of it beside one straight wall, nothing between two.
 *
 * @throws {RangeError} when the radius or the tolerance is negative or not a number
 */
export function hardlyNarrower(axis: MedialAxis, radiusMm: number, toleranceMm: number): HardlyNarrower {
  checkRadius(radiusMm);
  checkRadius(toleranceMm);
  const radius = enteringRadius(axis, radiusMm);
  const least = 2 * (radiusMm - toleranceMm * (1 + SHORT_REL_TOL));
  if (least <= 0) {
    return { fitsAsDrawn: false, tooNarrow: [] };
  }
  const strokes = narrowStretchesFrom(axis, 2 * radiusMm, least).filter(({ kind }) => kind === 'stroke');
  const dots = separateParts(axis).filter(
    ({ strokeMm, widthMm }) => strokeMm === 0 && widthMm >= least && widthMm < 2 * radius,
  );
  if (strokes.length + dots.length === 0) {
    return { fitsAsDrawn: false, tooNarrow: [] };
  }
  const walls = new Walls(axis, toleranceMm);
  const tooNarrow = strokes.filter(({ edges }) => !edges.every((e) => walls.mayHold(e, radius)));
  return {
    fitsAsDrawn: tooNarrow.length < strokes.length || dots.some(({ atMm }) => walls.mayHoldAt(atMm, radius)),
    tooNarrow,
  };
}

/** How far the walls of an artwork may lie from where they were drawn. */
class Walls {
  readonly #axis: MedialAxis;
  readonly #isCurved: Uint8Array;
  readonly #toleranceMm: number;

  constructor(axis: MedialAxis, toleranceMm: number) {
    this.#axis = axis;
    this.#isCurved = curvedEdges(axis.region, toleranceMm);
    this.#toleranceMm = toleranceMm * (1 + SHORT_REL_TOL);
  }

  /** Whether both walls of an axis edge may have held a disc of this radius where they are nearest. */
  mayHold(e: number, radius: number): boolean {
    return radius - this.#axis.nodeR[this.#axis.edgeFrom[e]] <= this.#slack(e);
  }

  /** Whether all walls around a place of greatest clearance may have held a disc of this radius. */
  mayHoldAt([x, y]: Point, radius: number): boolean {
    const { edgeTo, nodeX, nodeY, nodeR, boundary } = this.#axis;
    const { originX, originY } = boundary;
    const node = nodeR.findIndex((_, k) => nodeX[k] + originX === x && nodeY[k] + originY === y);
    const short = radius - nodeR[node];
    return edgeTo.every((to, e) => to !== node || isSecondary(this.#axis, e) || short <= this.#slack(e));
  }

  #slack(e: number): number {
    const { edgeLeft, edgeRight } = this.#axis;
    return (this.#toleranceMm * (this.#curved(edgeLeft[e]) + this.#curved(edgeRight[e]))) / 2;
  }

  /** 1 for a site that is, or ends, a chord of a curve, else 0. */
  #curved(site: number): number {
    const { count, previous } = this.#axis.boundary;
    const i = site < count ? site : site - count;
    return site < count ? this.#isCurved[i] : this.#isCurved[i] | this.#isCurved[previous[i]];
  }
}
