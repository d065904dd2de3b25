import type { NarrowStretch } from '@pourproof/geometry';
import { flatBitsBelow } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfStretch } from './places.ts';
import { proposed } from './proposed.ts';

/** Strokes that the bit only just enters: any runout or flexing of the bit widens or burns them. */
export const strokeNearBitWidth: Check = {
  code: 'stroke-near-bit-width',
  run: (measured) => {
    if (measured.shape.includedRad !== null) {
      // a V opens upwards and frees its chips; it cuts any width as deep as it is wide
      return null;
    }
    const limit = measured.bitMm * limits.strokeToBit.value;
    const tight = tightStretches(measured, measured.bitMm);
    const [first] = tight;
    if (first === undefined) {
      return null;
    }
    const narrowest = tight.reduce((least, each) => Math.min(least, each.narrowestMm), first.narrowestMm);
    return {
      code: 'stroke-near-bit-width',
      severity: 'caution',
      where: tight.map(placeOfStretch),
      measured: { value: narrowest, quantity: 'width', unit: 'mm' },
      limit: { value: limit, quantity: 'width', unit: 'mm' },
      because: ['local-thickness', ...limits.strokeToBit.because],
      fix: proposed(() => fixes(measured, narrowest, limit)),
    };
  },
};

/**
 * Strokes that a bit does enter but with less room than is safe, in the artwork scaled by `factor`; tapers
 * pass through every width and are left out.
 */
function tightStretches(measured: Measured, bitMm: number, factor = 1): readonly NarrowStretch[] {
  return measured.narrowerThan(bitMm * limits.strokeToBit.value).filter(
    (stretch) =>
      stretch.kind === 'stroke' &&
      stretch.narrowestMm >= bitMm - measured.job.toleranceMm / factor &&
      // shorter than a fifth of the bit is a bottleneck that the bit passes in one turn (our choice)
      stretch.lengthMm > bitMm / 5,
  );
}

/**
 * Every bit and scale is tried on the artwork itself: strokes that this bit does not enter may be barely
 * wider than the next.
 */
function fixes(measured: Measured, narrowest: number, limit: number): Fix[] {
  const ratio = limits.strokeToBit.value;
  const fit = flatBitsBelow(measured.bitMm, measured.job.units, measured.job.materials.cutters).find(
    (diameter) => diameter * ratio <= narrowest && tightStretches(measured, diameter).length === 0,
  );
  const options: Fix[] = [];
  if (fit !== undefined) {
    options.push({ do: 'use-bit', kind: 'flat', diameterMm: fit, clears: true });
  }
  const factor = scaleWithRoom(measured, narrowest);
  if (factor !== null) {
    options.push({ do: 'scale', factor, clears: true });
  }
  options.push({
    do: 'widen',
    what: 'stroke',
    byMm: Math.ceil((limit - narrowest) * 100) / 100,
    clears: true,
  });
  return options;
}

/**
 * Scalings tried, each of which may bring a narrower stroke up to the bit, before scaling is given up (our
 * choice).
 */
const MAX_ROUNDS = 10;

/**
 * The factor, in whole hundredths, at which no stroke is barely wider than the bit; `null` where ever
 * narrower ones come up to it.
 */
function scaleWithRoom(measured: Measured, narrowest: number): number | null {
  let least = narrowest;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const factor = Math.ceil(((measured.bitMm * limits.strokeToBit.value) / least) * 100) / 100;
    const tight = tightStretches(measured, measured.bitMm / factor, factor);
    if (tight.length === 0) {
      return factor;
    }
    least = tight.reduce((most, each) => Math.min(most, each.narrowestMm), least);
  }
  return null;
}
