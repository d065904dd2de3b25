import type { Sealer } from './sealer.ts';

/** Film that a seal leaves, in mm of solids. */
export interface SealFilm {
  readonly filmMm: number;
  /** Thin and thick brushing. */
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * Thickness in mm of the film that `coats` of a sealer leave on walls and floor: wet film × solids × coats.
 *
 * @throws {RangeError} when coats is not a whole number from 0
 */
export function sealFilm(sealer: Sealer, coats: number): SealFilm {
  if (!(Number.isInteger(coats) && coats >= 0)) {
    throw new RangeError(`coats is ${coats}; it must be a whole number from 0.`);
  }
  const share = sealer.solids.value * coats;
  const { value, low, high } = sealer.wetFilmMm;
  return { filmMm: value * share, lowMm: low * share, highMm: high * share };
}

/**
 * Mass in g of liquid sealer for `coats` over an area of walls, floor and face in mm²; nothing added for
 * brush and cup.
 */
export function sealerMassG(sealer: Sealer, coats: number, areaMm2: number): number {
  return (sealer.wetFilmMm.value * coats * areaMm2 * sealer.densityGPerMl.value) / 1000;
}
