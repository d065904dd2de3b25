import { limits } from '@pourproof/materials';
import { byGrain } from '@pourproof/plane';
import { partsOf } from '../cut/of-axis.ts';
import { veeDepthMm, veeWidthMm } from '../cut/vee-depth.ts';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';

/** Depths that differ by less than this share are the same. */
const SAME_DEPTH_REL_TOL = 1e-9;

/**
 * A V whose flanks end before its tip is as deep as the job asks, where the artwork is wide enough to need
 * it.
 */
export const veeEndsEarly: Check = {
  code: 'vee-ends-early',
  run: ({ axis, job, carving }) => {
    // of several V bits the deepest counts: where it does not end early, none does
    const [limited] = job.bits
      .flatMap((bit, k) => (bit.kind === 'vee' ? [{ bit, ...carving.perCutter[k] }] : []))
      .toSorted(byGrain(({ depthMm }) => -(depthMm ?? 0)));
    if (limited?.limitedBy === undefined || limited.depthMm === undefined) {
      return null;
    }
    const widestMm = 2 * axis.nodeR.reduce((most, r) => Math.max(most, r), 0);
    // how deep the widest stroke would let a larger bit of this angle go
    const wanted = Math.min(job.depthMm, veeDepthMm(limited.bit, widestMm));
    if (wanted <= limited.depthMm * (1 + SAME_DEPTH_REL_TOL)) {
      return null;
    }
    const needed = veeWidthMm(limited.bit, wanted);
    const reachedMm = veeWidthMm(limited.bit, limited.depthMm);
    return {
      code: 'vee-ends-early',
      // so little depth is not seen under colour
      severity: wanted - limited.depthMm < limits.endSeen.value ? 'note' : 'caution',
      where: partsOf(axis)
        .filter(({ widthMm }) => widthMm > reachedMm * (1 + SAME_DEPTH_REL_TOL))
        .map(({ atMm, widthMm }) => placeOfPoint(atMm, { what: 'stroke', widthMm })),
      measured: { value: limited.depthMm, quantity: 'depth', unit: 'mm' },
      limit: { value: wanted, quantity: 'depth', unit: 'mm' },
      because: ['vee-depth', 'own-inference'],
      fix: {
        options: [
          ...(limited.limitedBy === 'diameter'
            ? [
                {
                  do: 'use-vee' as const,
                  angleDeg: limited.bit.angleDeg,
                  diameterMm: Math.ceil(needed * 100) / 100,
                  clears: true,
                },
              ]
            : []),
          { do: 'cut-shallower', toMm: Math.floor(limited.depthMm * 100) / 100, clears: true },
        ],
      },
    };
  },
};
