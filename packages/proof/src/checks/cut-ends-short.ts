import { flatBitsBelow } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import { byGrain } from '@pourproof/plane';
import { type Loss, type Losses, lossesOf } from '../cut/losses.ts';
import { type BitAtSize, LossesByPart, type WillDo } from '../cut/losses-by-part.ts';
import type { Measured } from '../measured.ts';
import type { FindingPlace, Severity } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { leastWhole } from './least-whole.ts';
import { placeOfRings } from './places.ts';
import { proposed } from './proposed.ts';

const GRAVITY: Readonly<Record<Severity, number>> = { note: 0, caution: 1, stop: 2 };
/** Steps of the factor of a way out, as printed. */
const STEPS = 100;
/** Scaling by more makes it another job, and is not offered (our choice). */
const MAX_SCALED = 4;

/** Tips that end short, corners that come out round, waists that the bit does not follow: graded by how much is lost. */
export const cutEndsShort: Check = {
  code: 'cut-ends-short',
  run: (measured) => {
    const { ends, lost } = lossesOf(measured);
    const severity = gravest(ends);
    if (severity === null) {
      return null;
    }
    // of equal ones the one with the stricter limit, whatever rounding says
    const [worst] = ends
      .filter((each) => each.severity === severity)
      .toSorted(byGrain(({ limitMm }) => limitMm))
      .toSorted(byGrain(({ shortMm }) => -shortMm));
    if (worst === undefined) {
      return null;
    }
    return {
      code: 'cut-ends-short',
      severity,
      where: ends.map(placeOf),
      measured: { value: worst.shortMm, quantity: 'length', unit: 'mm' },
      limit: { value: worst.limitMm, quantity: 'length', unit: 'mm' },
      because: [...new Set(['opening-by-disc', ...limits.tipShort.because])],
      // where whole strokes are lost as well, the bit for them comes first
      fix: proposed(() => (lost.length > 0 && severity === 'note' ? [] : fixes(measured, severity))),
    };
  },
};

function gravest(ends: readonly Loss[]): Severity | null {
  return ends.reduce<Severity | null>(
    (most, { severity }) => (most === null || GRAVITY[severity] > GRAVITY[most] ? severity : most),
    null,
  );
}

function placeOf(loss: Loss): FindingPlace {
  const { kind, atMm, outline, branch, narrowestMm } = loss.piece;
  const widthMm = branch?.widthMm ?? narrowestMm;
  return placeOfRings(atMm, outline, {
    what: kind === 'tip' || kind === 'corner' ? kind : 'waist',
    lengthMm: loss.shortMm,
    ...(widthMm === null ? {} : { widthMm }),
  });
}

/** Bits and scales are tried on the artwork itself; a tip loses as much to the same bit at every size. */
function fixes(measured: Measured, severity: Severity): readonly Fix[] {
  const { axis, job, drawing, standing, stages } = measured;
  const { bits, depthMm, toleranceMm, units, materials } = job;
  const reads = { bits, depthMm, toleranceMm, curvesMm: drawing.toleranceMm, units, severity };
  return stages.of('ends', [axis, standing, materials.cutters], reads, () => proposals(measured, severity));
}

function proposals(measured: Measured, severity: Severity): readonly Fix[] {
  const left = new LossesByPart(measured);
  const options: Fix[] = [];
  if (measured.shape.includedRad === null) {
    options.push(...finerBit(measured, left));
  } else {
    options.push({ do: 'use-tip', tipMm: 0, clears: true });
  }
  const factor =
    severity === 'note'
      ? null
      : (scaleThatHolds(measured, left, isWhole) ?? scaleThatHolds(measured, left, isSlight));
  if (factor !== null) {
    options.push({ do: 'scale', factor, clears: true });
  }
  options.push({ do: 'redraw-ends', clears: true });
  return options;
}

/** The widest bit that leaves no more than a note; where none does, the finest, and what it leaves. */
function finerBit({ bitMm, job }: Measured, left: LossesByPart): Fix[] {
  const bits = flatBitsBelow(bitMm, job.units, job.materials.cutters).map(
    (diameterMm): BitAtSize => ({ diameterMm, factor: 1 }),
  );
  const fit = left.found((isEnough) => bits.find(isEnough) ?? null, isSlight);
  const bit = fit ?? bits.at(-1);
  if (bit === undefined) {
    return [];
  }
  const ends = left.of(bit).flatMap((losses) => losses.ends);
  const leftShortMm = ends.reduce((most, { shortMm }) => Math.max(most, shortMm), 0);
  return [
    {
      do: 'use-bit',
      kind: 'flat',
      diameterMm: bit.diameterMm,
      ...(leftShortMm > 0 ? { leftShortMm } : {}),
      clears: fit !== null,
    },
  ];
}

function isSlight({ ends }: Losses): boolean {
  return ends.every(({ severity }) => severity === 'note');
}

/** Whether no stroke is lost either: one that is entered at a larger size ends short there at first. */
function isWhole(losses: Losses): boolean {
  return losses.lost.length === 0 && isSlight(losses);
}

/** The least factor, in whole hundredths, at which what is lost is slight beside the artwork; `null` where none is. */
function scaleThatHolds({ bitMm }: Measured, left: LossesByPart, willDo: WillDo): number | null {
  const at = (steps: number): BitAtSize => ({ diameterMm: bitMm, factor: steps / STEPS });
  const found = left.found((isEnough) => {
    const high = MAX_SCALED * STEPS;
    return isEnough(at(high)) ? at(leastWhole(STEPS, high, (steps) => isEnough(at(steps)))) : null;
  }, willDo);
  return found?.factor ?? null;
}
