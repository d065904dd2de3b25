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
      fix: { options: fixes(worst) },
    };
  },
};

/** More wood, or a cut so shallow that the island's foot carries it: π w²/4 over the least foot for each millimetre. */
function fixes({ widthMm, limitMm, heightMm }: Island): Fix[] {
  const foot = (Math.PI / 4) * widthMm ** 2;
  const depth = Math.floor((foot / limits.islandFootToHeight.value) * STEPS_PER_MM) / STEPS_PER_MM;
  const options: Fix[] = [
    {
      do: 'widen',
      what: 'wood',
      byMm: Math.ceil((limitMm - widthMm) * STEPS_PER_MM) / STEPS_PER_MM,
      clears: true,
    },
  ];
  if (depth < heightMm && depth >= heightMm / MAX_SHALLOWED) {
    options.push({ do: 'cut-shallower', toMm: depth, clears: true });
  }
  return options;
}

/** A cut that has to get more than this many times shallower is another job (our choice). */
const MAX_SHALLOWED = 2;
