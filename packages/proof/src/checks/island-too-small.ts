import { limits } from '@pourproof/materials';
import type { Fix } from '../report/fix-schema.ts';
import type { Island } from '../slivers/find-slivers.ts';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';

/** Digits kept of a way out, as lengths are printed. */
const STEPS_PER_MM = 100;

/** Islands of wood in a pocket so small that they break or come loose: counters, dots left standing. */
export const islandTooSmall: Check = {
  code: 'island-too-small',
  run: ({ slivers: { islands } }) => {
    const [worst] = islands;
    if (worst === undefined) {
      return null;
    }
    return {
      code: 'island-too-small',
      severity: 'caution',
      where: islands.map(({ atMm, widthMm }) => placeOfPoint(atMm, { what: 'island', widthMm })),
      measured: { value: worst.widthMm, quantity: 'width', unit: 'mm' },
      limit: { value: worst.limitMm, quantity: 'width', unit: 'mm' },
      because: [...new Set([...limits.islandWidth.because, ...limits.islandFootToHeight.because])],
      fix: { options: fixes(islands) },
    };
  },
};

/** For each of them more wood, or a cut so shallow that its foot carries it: π w²/4 over the least foot for each millimetre. */
function fixes(islands: readonly Island[]): Fix[] {
  const missingMm = Math.max(...islands.map(({ widthMm, limitMm }) => limitMm - widthMm));
  const depth = Math.min(...islands.map(depthThatHolds));
  const highest = Math.max(...islands.map(({ heightMm }) => heightMm));
  const options: Fix[] = [
    { do: 'widen', what: 'wood', byMm: Math.ceil(missingMm * STEPS_PER_MM) / STEPS_PER_MM, clears: true },
  ];
  if (depth < highest && depth >= highest / MAX_SHALLOWED) {
    options.push({ do: 'cut-shallower', toMm: depth, clears: true });
  }
  return options;
}

function depthThatHolds({ widthMm }: Island): number {
  const foot = (Math.PI / 4) * widthMm ** 2;
  return Math.floor((foot / limits.islandFootToHeight.value) * STEPS_PER_MM) / STEPS_PER_MM;
}

/** A cut that has to get more than this many times shallower is another job (our choice). */
const MAX_SHALLOWED = 2;
