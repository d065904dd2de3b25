import { type Cited, cited } from './cited.ts';
import type { MixRatio } from './resin.ts';

/** A scale. */
export interface Scale {
  readonly name: string;
  /** Smallest step of the display in g. */
  readonly resolutionG: Cited;
  /** Most mix that it weighs in one cup, g; absent where nobody said. */
  readonly capacityG?: Cited;
}

/** Id of a scale that ships with pourproof. */
export type ScaleId = 'fine' | 'tenth' | 'kitchen';

/** Scales by id. */
export const scales: Readonly<Record<ScaleId, Scale>> = {
  fine: { name: 'scale reading 0.01 g', resolutionG: cited(0.01, 'practice', 'common-practice') },
  tenth: { name: 'scale reading 0.1 g', resolutionG: cited(0.1, 'practice', 'common-practice') },
  kitchen: { name: 'kitchen scale reading 1 g', resolutionG: cited(1, 'practice', 'common-practice') },
};

/** How a batch is weighed. */
export interface Weighing {
  readonly resolutionG: number;
  /** A over B by weight. */
  readonly ratio: MixRatio;
  /** How far the ratio may be off, in percent. */
  readonly tolerancePct: number;
  /** True if the scale is set to zero between the parts; false if B is added up to a running total. */
  readonly zeroedBetween: boolean;
}

/**
 * Returns the smallest batch in g whose ratio A:B stays within the tolerance however the display rounds.
 *
 * A reading is off by half a step; on a running total the error of A passes into B, so B may be off by a
 * whole step. Worst case, exact: M = (e_A + (1 + τ)(a/b) e_B) / (τ a/(a+b)).
 * @throws {RangeError} when resolution, tolerance or a part of the ratio is not above 0
 */
export function smallestBatchG(weighing: Weighing): number {
  const { resolutionG, ratio, tolerancePct } = weighing;
  if (!(resolutionG > 0 && tolerancePct > 0 && ratio.a > 0 && ratio.b > 0)) {
    throw new RangeError('Resolution, tolerance and both parts of the ratio must be above 0.');
  }
  const tolerance = tolerancePct / 100;
  const errorA = resolutionG / 2;
  const errorB = weighing.zeroedBetween ? resolutionG / 2 : resolutionG;
  const shareA = ratio.a / (ratio.a + ratio.b);
  return (errorA + (1 + tolerance) * (ratio.a / ratio.b) * errorB) / (tolerance * shareA);
}
