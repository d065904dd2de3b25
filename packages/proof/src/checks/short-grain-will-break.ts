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
      fix: proposed(() => [...bitFixes(measured), ...spacingFixes(measured, slivers.thin), ...fixes(worst)]),
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

function fixes({ widthMm, limitMm, heightMm, isShortGrain }: Sliver): Fix[] {
  const least = (isShortGrain ? limits.wallShortGrain : limits.wallAlongGrain).value;
  const ratio = (isShortGrain ? limits.wallShortGrainToDepth : limits.wallAlongGrainToDepth).value;
  const options: Fix[] = [
    { do: 'widen', what: 'wood', byMm: Math.ceil((limitMm - widthMm) * 100) / 100, clears: true },
  ];
  const depth = Math.floor((widthMm / ratio) * 100) / 100;
  if (widthMm >= least && depth < heightMm) {
    options.push({ do: 'cut-shallower', toMm: depth, clears: true });
  }
  return options;
}
