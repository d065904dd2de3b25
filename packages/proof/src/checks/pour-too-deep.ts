import { pourLifts } from '@pourproof/materials';
import { formatLength } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import type { FixOption } from '../report/report.ts';
import type { Check } from './check.ts';

/** A pocket deeper than this resin may be poured at once: it heats itself, smokes, foams or cracks. */
export const pourTooDeep: Check = {
  code: 'pour-too-deep',
  title: 'Too deep for one pour of this resin',
  run: (measured) => {
    const { job, cutArea, maxDepth, pour } = measured;
    if (cutArea === 0 || pour.lifts.count <= 1) {
      return null;
    }
    const { deepestPourMm } = job.rows.resin;
    return {
      code: 'pour-too-deep',
      severity: 'caution',
      where: [],
      measured: { value: maxDepth + job.overpourMm, unit: 'mm' },
      limit: { value: deepestPourMm.value, unit: 'mm' },
      because: [...deepestPourMm.because, 'resin-chemistry-page'],
      fix: { options: fixes(measured) },
    };
  },
  advise: (finding, unit) => ({
    headline: `${formatLength(finding.measured.value, unit)} with the overpour is deeper than one pour of this resin should be: ${formatLength(finding.limit.value, unit)}.`,
    why: 'Heat of cure leaves a deep pour slowly (its time grows with the square of the depth), so it can smoke, foam, yellow or crack. The label’s own depth comes first.',
    fixes: finding.fix.options.map((option) =>
      option.do === 'pour-in-lifts'
        ? `Pour ${option.value} equal lifts, each while the last is tacky and no longer warm.`
        : `Use ${option.value}: one pour is enough, but it stays thin for long and runs further into end grain.`,
    ),
  }),
};

function fixes({ job, maxDepth, pour }: Measured): FixOption[] {
  const deep = Object.values(job.materials.resins).find(
    (resin) => pourLifts(maxDepth + job.overpourMm, resin.deepestPourMm.value).count === 1,
  );
  return [
    { do: 'pour-in-lifts', value: pour.lifts.count, unit: 'lifts', clears: true },
    ...(deep === undefined
      ? []
      : [{ do: 'use-resin' as const, value: deep.name, unit: 'resin', clears: true }]),
  ];
}
