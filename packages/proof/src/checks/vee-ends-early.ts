import { formatLength } from '@pourproof/plane';
import { bitSize } from '../job/bit.ts';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';

/** A V whose flanks end before its tip is as deep as the job asks, where the artwork is wide enough to need it. */
export const veeEndsEarly: Check = {
  code: 'vee-ends-early',
  title: 'The V ends before the depth is reached',
  run: ({ axis, job, carving, shape }) => {
    const k = carving.perCutter.findIndex(({ limitedBy }) => limitedBy !== undefined);
    const bit = job.bits[k];
    const limited = carving.perCutter[k];
    if (bit?.kind !== 'vee' || limited === undefined || shape.includedRad === null) {
      return null;
    }
    const widest = axis.nodeR.reduce((most, r, node) => (r > (axis.nodeR[most] ?? 0) ? node : most), 0);
    const tan = Math.tan(shape.includedRad / 2);
    // how deep the widest stroke would let a larger bit of this angle go
    const wanted = Math.min(job.depthMm, ((axis.nodeR[widest] ?? 0) - shape.entersMm / 2) / tan);
    if (wanted <= limited.depthMm * (1 + 1e-9)) {
      return null;
    }
    const needed = 2 * wanted * tan + shape.entersMm;
    return {
      code: 'vee-ends-early',
      severity: 'caution',
      where: [
        placeOfPoint([
          (axis.nodeX[widest] ?? 0) + axis.boundary.originX,
          (axis.nodeY[widest] ?? 0) + axis.boundary.originY,
        ]),
      ],
      measured: { value: limited.depthMm, unit: 'mm' },
      limit: { value: wanted, unit: 'mm' },
      because: ['vee-depth', 'own-inference'],
      fix: {
        options: [
          ...(limited.limitedBy === 'diameter'
            ? [{ do: 'use-bit' as const, value: Math.ceil(needed * 100) / 100, unit: 'mm', clears: true }]
            : []),
          { do: 'cut-shallower', value: Math.floor(limited.depthMm * 100) / 100, unit: 'mm', clears: true },
        ],
      },
    };
  },
  advise: (finding, unit) => ({
    headline: `The V can go ${formatLength(finding.measured.value, unit)} deep and no more; the widest stroke at this depth asks for ${formatLength(finding.limit.value, unit)}.`,
    why: 'Beyond the end of its flanks or its edges a bit rubs and burns instead of cutting. The measures of this proof stop where it ends.',
    fixes: finding.fix.options.map((option) =>
      option.do === 'use-bit'
        ? `Use a V of the same angle, ${bitSize(Number(option.value), unit)} across or more.`
        : `Ask for ${formatLength(Number(option.value), unit)} of depth: the same cut, and a flat bit can clear its floor.`,
    ),
  }),
};
