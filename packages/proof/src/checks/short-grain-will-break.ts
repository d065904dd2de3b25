import { flatBitsBelow } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import { isInside } from '../board/is-inside.ts';
import { sweptBy } from '../cut/floor-left.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Sliver } from '../slivers/find-slivers.ts';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';
import { proposed } from './proposed.ts';
import { spacingFixes } from './spacing-fixes.ts';

/** Wood between cuts too thin for its height: worst where the fibres run across it. */
export const shortGrainWillBreak: Check = {
  code: 'short-grain-will-break',
  run: (measured) => {
    const { slivers } = measured;
    const [worst] = slivers.thin;
    if (worst === undefined) {
      return null;
    }
    const [wide, ratio] = worst.isShortGrain
      ? [limits.wallShortGrain, limits.wallShortGrainToDepth]
      : [limits.wallAlongGrain, limits.wallAlongGrainToDepth];
    return {
      code: 'short-grain-will-break',
      severity: 'caution',
      where: slivers.thin.map(({ atMm, path, lengthMm, widthMm }) =>
        placeOfPath(atMm, path, { what: 'wood', lengthMm, widthMm }),
      ),
      measured: { value: worst.widthMm, quantity: 'width', unit: 'mm' },
      limit: { value: worst.limitMm, quantity: 'width', unit: 'mm' },
      acrossGrain: worst.isShortGrain,
      because: [...new Set([...wide.because, ...ratio.because])],
      fix: proposed(() => [
        ...bitFixes(measured),
        ...spacingFixes(measured, slivers.thin),
        ...fixes(slivers.thin),
      ]),
    };
  },
};

/** The largest flat bit that cuts away thin wood within the artwork, which the bits of the job leave where strokes meet. */
function bitFixes({ slivers, artwork, axis, job, shape, bitMm }: Measured): Fix[] {
  const within = slivers.thin.filter(({ atMm: [x, y] }) => isInside(artwork, x, y));
  if (within.length === 0 || shape.includedRad !== null) {
    return [];
  }
  const bit = flatBitsBelow(bitMm, job.units, job.materials.cutters).find((diameterMm) => {
    const cut = sweptBy(axis, diameterMm, job.toleranceMm);
    return within.every(({ atMm: [x, y] }) => isInside(cut, x, y));
  });
  return bit === undefined ? [] : [{ do: 'use-bit', kind: 'flat', diameterMm: bit, clears: true }];
}

/** What is enough for each of them. */
function fixes(thin: readonly Sliver[]): Fix[] {
  const missingMm = Math.max(...thin.map(({ widthMm, limitMm }) => limitMm - widthMm));
  const options: Fix[] = [
    { do: 'widen', what: 'wood', byMm: Math.ceil(missingMm * 100) / 100, clears: true },
  ];
  const depth = Math.min(...thin.map(depthThatHolds));
  if (depth > 0 && depth < Math.max(...thin.map(({ heightMm }) => heightMm))) {
    options.push({ do: 'cut-shallower', toMm: depth, clears: true });
  }
  return options;
}

/** The greatest depth, in whole hundredths of a millimetre, at which thin wood holds; 0 where it is too thin at any. */
function depthThatHolds({ widthMm, isShortGrain }: Sliver): number {
  const least = (isShortGrain ? limits.wallShortGrain : limits.wallAlongGrain).value;
  const ratio = (isShortGrain ? limits.wallShortGrainToDepth : limits.wallAlongGrainToDepth).value;
  return widthMm < least ? 0 : Math.floor((widthMm / ratio) * 100) / 100;
}
