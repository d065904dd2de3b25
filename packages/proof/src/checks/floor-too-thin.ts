import { limits } from '@pourproof/materials';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';

/** A sum of lengths this far below a limit is at it, mm: rounding. */
const ROUNDING_MM = 1e-6;

/** Too little wood left under the pocket of a board whose thickness is known. */
export const floorTooThin: Check = {
  code: 'floor-too-thin',
  run: (measured) => {
    const { job, cutArea, site } = measured;
    const { thicknessMm } = job;
    const maxDepth = measured.maxDepth + site.loweredMm;
    if (thicknessMm === null || cutArea === 0) {
      return null;
    }
    const floorMm = thicknessMm - maxDepth;
    const leastMm = leastFloorMm(thicknessMm);
    if (floorMm >= leastMm - ROUNDING_MM) {
      return null;
    }
    const isGone = floorMm < limits.floorGone.value - ROUNDING_MM;
    return {
      code: 'floor-too-thin',
      severity: isGone ? 'stop' : 'caution',
      where: [],
      measured: { value: floorMm, quantity: 'height', unit: 'mm' },
      limit: { value: leastMm, quantity: 'height', unit: 'mm' },
      because: [
        ...new Set([...limits.floorUnderPocket.because, ...(isGone ? limits.floorGone.because : [])]),
      ],
      fix: {
        options: [...shallower(thicknessMm - leastMm - site.loweredMm), thicker(maxDepth)],
      },
    };
  },
};

/** Wood to be left under a pocket, mm. */
export function leastFloorMm(thicknessMm: number): number {
  return Math.max(limits.floorUnderPocket.value, limits.floorToBoard.value * thicknessMm);
}

function shallower(deepestMm: number): Fix[] {
  const toMm = Math.floor((deepestMm + ROUNDING_MM) * 100) / 100;
  return toMm > 0 ? [{ do: 'cut-shallower', toMm, clears: true }] : [];
}

/** The least board under which the same pocket leaves enough. */
function thicker(depthMm: number): Fix {
  const least = Math.max(depthMm + limits.floorUnderPocket.value, depthMm / (1 - limits.floorToBoard.value));
  return {
    do: 'thicker-board',
    thicknessMm: Math.ceil((least - ROUNDING_MM) * 100) / 100,
    clears: true,
  };
}
