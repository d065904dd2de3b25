import type { StandingPiece } from '@pourproof/geometry';
import { flatBitsBelow } from '@pourproof/job';
import { type Losses, lossesOf } from '../cut/losses.ts';
import { type BitAtSize, LossesByPart } from '../cut/losses-by-part.ts';
import type { Measured } from '../measured.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { leastWhole } from './least-whole.ts';
import { placeOfRings } from './places.ts';
import { proposed } from './proposed.ts';

/** Parts of strokes that the smallest bit can't enter stay wood: serifs, hairlines, tips. */
export const bitCannotEnter: Check = {
  code: 'bit-cannot-enter',
  run: (measured) => {
    const { lost } = lossesOf(measured);
    if (lost.length === 0) {
      return null;
    }
    const isVee = measured.shape.includedRad !== null;
    const quantity = isVee ? ('tip-width' as const) : ('diameter' as const);
    return {
      code: 'bit-cannot-enter',
      severity: 'stop',
      where: lost.map(placeOfLost),
      measured: { value: Math.min(...lost.map(widthOf)), quantity: 'width', unit: 'mm' },
      limit: { value: measured.bitMm, quantity, unit: 'mm' },
      because: ['opening-by-disc'],
      fix: proposed(() => fixes(measured)),
    };
  },
};

/** The bit that a lost part would take all along: the least width of a stroke, the diameter of a dot. */
function widthOf({ narrowestMm, widestMm }: StandingPiece): number {
  return narrowestMm ?? widestMm;
}

/** A lost part with its sizes: of a stroke the mean width, and the length that has its area at that width. */
function placeOfLost({
  atMm,
  outline,
  narrowestMm,
  areaMm2,
  meanWidthMm,
  widestMm,
}: StandingPiece): FindingPlace {
  return placeOfRings(
    atMm,
    outline,
    narrowestMm === null
      ? { what: 'dot', widthMm: widestMm, areaMm2 }
      : { what: 'stroke', lengthMm: areaMm2 / meanWidthMm, widthMm: meanWidthMm, areaMm2 },
  );
}

function fixes(measured: Measured): readonly Fix[] {
  const { axis, job, drawing, standing, stages } = measured;
  const { bits, depthMm, toleranceMm, units, materials } = job;
  const reads = { bits, depthMm, toleranceMm, curvesMm: drawing.toleranceMm, units };
  return stages.of('entering', [axis, standing, materials.cutters], reads, () => {
    const left = new LossesByPart(measured);
    const largest = largestThatEnters(measured, left);
    return measured.shape.includedRad === null
      ? flatFixes(measured, largest, left)
      : veeFixes(measured, largest, left);
  });
}

/** Whether all strokes are entered. */
function isEntered({ lost }: Losses): boolean {
  return lost.length === 0;
}

/** Other bits stay within the walls of a V: only a finer tip, a larger or a bolder artwork helps. */
function veeFixes(measured: Measured, largest: number | null, left: LossesByPart): Fix[] {
  const tipMm = largest === null ? 0 : Math.floor(largest * 100 + HUNDREDTHS_TOL) / 100;
  return [{ do: 'use-tip', tipMm, clears: true }, ...sizeFixes(measured, largest, left)];
}

/** Every fix is tried on the artwork itself before it is offered. */
function flatFixes(measured: Measured, largest: number | null, left: LossesByPart): Fix[] {
  const { bitMm, job } = measured;
  const bits = flatBitsBelow(bitMm, job.units, job.materials.cutters)
    // bits wider than the largest by more than its uncertainty need not be tried
    .filter((diameterMm) => diameterMm <= CERTAINTY * (largest ?? bitMm))
    .map(atItsSize);
  const bit = left.found((isEnough) => bits.find(isEnough) ?? null, isEntered);
  return [
    ...(bit === null
      ? []
      : [{ do: 'use-bit' as const, kind: 'flat' as const, diameterMm: bit.diameterMm, clears: true }]),
    ...sizeFixes(measured, largest, left),
  ];
}

function sizeFixes(measured: Measured, largest: number | null, left: LossesByPart): Fix[] {
  const { bitMm } = measured;
  const options: Fix[] = [];
  if (largest !== null) {
    const factor = scaleThatEnters(measured, largest, left);
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
 * Least factor above the ratio of the bit and the largest that enters, in whole hundredths as printed, by halving: each is tried. `null`
 * where the greatest does not help: a sharp tip loses as much to the bit at every size.
 */
function scaleThatEnters({ bitMm }: Measured, largest: number, left: LossesByPart): number | null {
  const ratio = bitMm / largest;
  const at = (hundredths: number): BitAtSize => ({ diameterMm: bitMm, factor: hundredths / 100 });
  const found = left.found((isEnough) => {
    const low = Math.ceil(100 * ratio);
    const high = Math.floor(100 * MAX_GROWTH * ratio);
    if (isEnough(at(low))) {
      return at(low);
    }
    if (high <= low || !isEnough(at(high))) {
      return null;
    }
    return at(leastWhole(low, high, (hundredths) => isEnough(at(hundredths))));
  }, isEntered);
  return found?.factor ?? null;
}

/** Relative accuracy of the largest bit that enters. */
const CERTAINTY = 1.01;
/**
 * First guesses, as shares of the narrowest stroke: slightly below it a bit nearly always enters, as wide as it often, slightly above
 * hardly ever (our choice).
 */
const GUESS: readonly number[] = [0.995, 1, 1.05];
/** What is as wide as a whole hundredth but for rounding is as wide. */
const HUNDREDTHS_TOL = 1e-6;

/**
 * Largest diameter below the bit's that enters everywhere, to 1 %, by halving from a guess at the narrowest
 * stroke; `null` when none above a fiftieth of the bit does.
 */
function largestThatEnters({ bitMm, strokes }: Measured, left: LossesByPart): number | null {
  const found = left.found((isEnough) => {
    const enters = (diameterMm: number): boolean => isEnough(atItsSize(diameterMm));
    let low = bitMm / 50;
    let high = bitMm;
    let isLowKnown = false;
    for (const factor of GUESS) {
      const guess = factor * (strokes.narrowestMm ?? 0);
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
    return atItsSize(low);
  }, isEntered);
  return found?.diameterMm ?? null;
}

function atItsSize(diameterMm: number): BitAtSize {
  return { diameterMm, factor: 1 };
}
