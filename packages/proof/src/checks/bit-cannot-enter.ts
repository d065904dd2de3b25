import { flatBitsBelow } from '@pourproof/job';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import { blockedPieces, entersScaled } from './blocked.ts';
import type { Check } from './check.ts';
import { placeOfRings } from './places.ts';

/** Parts of strokes that the smallest bit can't enter stay wood: serifs, hairlines, tips. */
export const bitCannotEnter: Check = {
  code: 'bit-cannot-enter',
  run: (measured) => {
    const pieces = blockedPieces(measured, measured.bitMm);
    if (pieces.length === 0) {
      return null;
    }
    const enters = (diameter: number): boolean => blockedPieces(measured, diameter).length === 0;
    const largest = largestThatEnters(measured.bitMm, measured.strokes.narrowestMm, enters);
    // where no bit enters everywhere, the widest that the tightest part takes
    const needed = largest ?? Math.min(...pieces.map((piece) => piece.widestMm));
    const isVee = measured.shape.includedRad !== null;
    const options = isVee ? veeFixes(measured, largest) : fixes(measured, largest, enters);
    const quantity = isVee ? ('tip-width' as const) : ('diameter' as const);
    return {
      code: 'bit-cannot-enter',
      severity: 'stop',
      where: pieces.map(({ atMm, outline, lengthMm, widestMm, areaMm2 }) =>
        placeOfRings(atMm, outline, { what: 'stroke', lengthMm, widthMm: widestMm, areaMm2 }),
      ),
      // the largest is known to 1 % only: a bit that was tried may be larger
      measured: { value: Math.max(needed, ...options.map(widthNamed)), quantity, unit: 'mm' },
      limit: { value: measured.bitMm, quantity, unit: 'mm' },
      because: ['opening-by-disc'],
      fix: { options },
    };
  },
};

/** Width of the bit or tip that a way out names; 0 for others. */
function widthNamed(fix: Fix): number {
  return fix.do === 'use-bit' ? fix.diameterMm : fix.do === 'use-tip' ? fix.tipMm : 0;
}

/** Other bits stay within the walls of a V: only a finer tip, a larger or a bolder artwork helps. */
function veeFixes(measured: Measured, largest: number | null): Fix[] {
  const tipMm = largest === null ? 0 : Math.floor(largest * 100) / 100;
  return [{ do: 'use-tip', tipMm, clears: true }, ...sizeFixes(measured, largest)];
}

/** Every fix is tried on the artwork itself before it is offered. */
function fixes(measured: Measured, largest: number | null, enters: (diameter: number) => boolean): Fix[] {
  const { bitMm } = measured;
  const options: Fix[] = [];
  // bits wider than the largest by more than its uncertainty need not be tried
  const bit = flatBitsBelow(bitMm, measured.job.units, measured.job.materials.cutters).find(
    (diameter) => diameter <= CERTAINTY * (largest ?? bitMm) && enters(diameter),
  );
  if (bit !== undefined) {
    options.push({ do: 'use-bit', kind: 'flat', diameterMm: bit, clears: true });
  }
  return [...options, ...sizeFixes(measured, largest)];
}

function sizeFixes(measured: Measured, largest: number | null): Fix[] {
  const { bitMm } = measured;
  const options: Fix[] = [];
  if (largest !== null) {
    const factor = scaleThatEnters(measured, largest);
    if (factor !== null) {
      options.push({ do: 'scale', factor, clears: true });
    }
    options.push({
      do: 'widen',
      what: 'stroke',
      byMm: Math.ceil((bitMm - largest) * 100) / 100,
      clears: true,
    });
  }
  return options;
}

/** How far beyond the ratio of bit to largest the factor is tried before scaling is given up (our choice). */
const MAX_GROWTH = 1.5;

/**
 * Least factor tried, from the ratio of the bit and the largest that enters on, in whole hundredths as
 * printed; `null` where scaling does not help: a sharp tip loses as much to the bit at every size.
 */
function scaleThatEnters(measured: Measured, largest: number): number | null {
  const ratio = measured.bitMm / largest;
  for (let factor = ratio; factor <= MAX_GROWTH * ratio; factor *= CERTAINTY) {
    const printed = Math.ceil(factor * 100) / 100;
    if (entersScaled(measured, printed)) {
      return printed;
    }
  }
  return null;
}

/** Relative accuracy of the largest bit that enters. */
const CERTAINTY = 1.01;
/**
 * First guesses, as shares of the narrowest stroke: slightly below it a bit nearly always enters, slightly
 * above hardly ever (our choice).
 */
const GUESS: readonly [number, number] = [0.995, 1.05];

/**
 * Largest diameter below the bit's that enters everywhere, to 1 %, by halving from a guess at the narrowest
 * stroke; `null` when none above a fiftieth of the bit does.
 */
function largestThatEnters(
  bitMm: number,
  narrowestMm: number | null,
  enters: (diameter: number) => boolean,
): number | null {
  let low = bitMm / 50;
  let high = bitMm;
  let isLowKnown = false;
  for (const factor of GUESS) {
    const guess = factor * (narrowestMm ?? 0);
    if (guess > low && guess < high) {
      if (enters(guess)) {
        low = guess;
        isLowKnown = true;
      } else {
        high = guess;
      }
    }
  }
  if (!isLowKnown && !enters(low)) {
    return null;
  }
  while (high / low > CERTAINTY) {
    const middle = Math.sqrt(low * high);
    if (enters(middle)) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return low;
}
