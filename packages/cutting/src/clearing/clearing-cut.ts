import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import { type Cutter, radiusAt } from '../cutters/cutter.ts';
import { widestClearance } from '../depth/widest-clearance.ts';
import type { Bounded } from '../integrals/adaptive-integral.ts';
import { reachedOutline } from '../slices/reached-outline.ts';
import type { Reach, StepCut } from '../slices/step-cut.ts';
import { ReachedSlices } from './reached-slices.ts';

/**
 * What a cutter clears with its tip at one depth and its centre wherever a disc of radius `centreMm` fits.
 */
export class ClearingCut implements StepCut {
  readonly depthMm: number;
  readonly isExact = true;
  readonly cutter: Cutter;
  readonly slices: ReachedSlices;
  readonly #axis: MedialAxis;

  constructor(axis: MedialAxis, cutter: Cutter, depthMm: number, centreMm: number) {
    this.#axis = axis;
    this.cutter = cutter;
    this.depthMm = depthMm;
    this.slices = new ReachedSlices(axis, centreMm);
  }

  get deepestMm(): number {
    return widestClearance(this.#axis) >= this.slices.centreMm ? this.depthMm : 0;
  }

  get edgeClearanceMm(): number {
    const { centreMm } = this.slices;
    return radiusAt(this.cutter, this.depthMm) >= centreMm ? centreMm : Infinity;
  }

  reachAt(depthMm: number): Reach {
    const { centreMm } = this.slices;
    return { centreMm, reachMm: Math.min(centreMm, radiusAt(this.cutter, this.depthMm - depthMm)) };
  }

  sliceArea(depthMm: number): Bounded {
    return { value: this.slices.areaAt(this.reachAt(depthMm).reachMm), error: 0 };
  }

  sliceOutline(depthMm: number): ArcRings {
    const { centreMm, reachMm } = this.reachAt(depthMm);
    return reachedOutline(this.#axis, centreMm, reachMm);
  }

  sliceExcess(): number {
    return 0;
  }

  volumeBetween(topMm: number, bottomMm: number): Bounded {
    return this.slices.volumeBetween(this.cutter, this.depthMm - bottomMm, this.depthMm - topMm);
  }

  wallBetween(topMm: number, bottomMm: number): Bounded {
    return this.slices.wallBetween(this.cutter, this.depthMm - bottomMm, this.depthMm - topMm);
  }
}
