import type { MedialAxis } from '@pourproof/geometry';
import { findLevelCrossings } from '@pourproof/geometry';
import { BoxIndex } from '@pourproof/plane';
import { ClearingCut } from '../clearing/clearing-cut.ts';
import { heightAt } from '../cutters/cutter.ts';
import { RoundedTipCut } from '../following/rounded-tip-cut.ts';
import { StraightFlankCut } from '../following/straight-flank-cut.ts';
import type { StepCut } from '../slices/step-cut.ts';
import { CellFinder, type CellPlace } from './cell-finder.ts';
import { DeepestCentre } from './deepest-centre.ts';

/**
 * Depth of the union of several cuts at points: exact to rounding, or to the search for the best centre where
 * a following cutter has no pointed tip.
 */
export class DepthField {
  readonly #axis: MedialAxis;
  readonly #cuts: readonly StepCut[];
  readonly #finder: CellFinder;
  readonly #crossingsOf = new Map<StepCut, CrossingIndex>();
  readonly #centreOf = new Map<StepCut, DeepestCentre>();

  constructor(axis: MedialAxis, cuts: readonly StepCut[]) {
    this.#axis = axis;
    this.#cuts = cuts;
    this.#finder = new CellFinder(axis);
  }

  /** Depth at a point given in absolute coordinates, mm; 0 outside the cut. */
  depthAt(xMm: number, yMm: number): number {
    const { originX, originY } = this.#axis.boundary;
    const [x, y] = [xMm - originX, yMm - originY];
    const place = this.#finder.find(x, y);
    if (place === undefined) {
      return 0;
    }
    let depth = 0;
    for (const cut of this.#cuts) {
      if (cut instanceof ClearingCut && cut.depthMm > depth) {
        depth = Math.max(depth, this.#clearDepth(cut, place, x, y));
      } else if (cut instanceof StraightFlankCut || cut instanceof RoundedTipCut) {
        depth = Math.max(depth, this.#followDepth(cut, place, x, y));
      }
    }
    return depth;
  }

  #clearDepth(cut: ClearingCut, { distanceMm, clearanceMm }: CellPlace, x: number, y: number): number {
    const { centreMm } = cut.slices;
    let off = Math.max(0, centreMm - distanceMm);
    if (clearanceMm < centreMm) {
      const crossings = this.#crossingsOf.get(cut) ?? new CrossingIndex(this.#axis, centreMm);
      this.#crossingsOf.set(cut, crossings);
      off = crossings.nearest(x, y, centreMm);
    }
    return cut.depthMm - heightAt(cut.cutter, off);
  }

  #followDepth(
    cut: StraightFlankCut | RoundedTipCut,
    { distanceMm, clearanceMm }: CellPlace,
    x: number,
    y: number,
  ): number {
    const { profile } = cut;
    const own = profile.depthBeside(distanceMm, clearanceMm);
    // a pointed tip cuts every point deepest from its contact's normal; so does any tip where the flanks
    // touch both walls
    if (profile.flankFromMm === 0 || clearanceMm >= profile.reachMm) {
      return own;
    }
    const centre = this.#centreOf.get(cut) ?? new DeepestCentre(this.#axis, profile);
    this.#centreOf.set(cut, centre);
    return centre.depthAt(x, y, own);
  }
}

/** An index of the level crossings at which a disc of one radius stops. */
class CrossingIndex {
  readonly #x: readonly number[];
  readonly #y: readonly number[];
  readonly #index: BoxIndex;

  constructor(axis: MedialAxis, centreMm: number) {
    const { x, y } = findLevelCrossings(axis, centreMm);
    this.#x = x;
    this.#y = y;
    const boxes = Float64Array.from({ length: 4 * x.length }, (_, k) => ((k & 1) === 0 ? x : y)[k >> 2]);
    this.#index = new BoxIndex(boxes);
  }

  /** Distance to the nearest crossing; Infinity where none is within `limit`. */
  nearest(px: number, py: number, limit: number): number {
    let best = Infinity;
    this.#index.visitNear(
      px,
      py,
      (distance) => distance <= limit && distance < best,
      (k) => {
        best = Math.min(best, Math.hypot(this.#x[k] - px, this.#y[k] - py));
      },
    );
    return best;
  }
}
