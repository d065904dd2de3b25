import { limits } from '@pourproof/materials';
import { formatLength } from '@pourproof/plane';
import type { FixOption } from '../report/report.ts';
import type { Sliver } from '../slivers/find-slivers.ts';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';
import { noLess, noMore } from './way-length.ts';

/** Wood between cuts too thin for its height: worst where the fibres run across it. */
export const shortGrainWillBreak: Check = {
  code: 'short-grain-will-break',
  title: 'Thin wood between cuts may break',
  run: ({ slivers }) => {
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
      where: slivers.thin.map((sliver) => placeOfPath(sliver.atMm, sliver.path)),
      measured: {
        value: worst.widthMm,
        unit: worst.isShortGrain ? 'mm across the grain' : 'mm along the grain',
      },
      limit: { value: worst.limitMm, unit: 'mm' },
      because: [...new Set([...wide.because, ...ratio.because])],
      fix: { options: fixes(worst) },
    };
  },
  advise: (finding, unit) => {
    const isShort = finding.measured.unit === 'mm across the grain';
    return {
      headline: `${finding.where.length === 1 ? 'One piece of wood' : `${finding.where.length} pieces of wood`} between cuts ${finding.where.length === 1 ? 'is' : 'are'} as thin as ${formatLength(finding.measured.value, unit)}${isShort ? ' with the fibres across' : ''}; practice asks for ${formatLength(finding.limit.value, unit)} there.`,
      why: isShort
        ? 'Short grain: the fibres run across the thin wall and hold it by their glue only, so it snaps under the bit or in levelling.'
        : 'Even along the fibres a wall this thin for its height bends away from the bit and tears.',
      fixes: [
        ...finding.fix.options.map((option) =>
          option.do === 'cut-shallower'
            ? `Cut no deeper than ${noMore(Number(option.value), unit)} there.`
            : `Give the wall ${noLess(Number(option.value), unit)} more wood.`,
        ),
        'Cut towards the thicker wood in light passes with a sharp down-cut bit, and fill one side before the other is cut.',
      ],
    };
  },
};

function fixes({ widthMm, limitMm, heightMm, isShortGrain }: Sliver): FixOption[] {
  const least = (isShortGrain ? limits.wallShortGrain : limits.wallAlongGrain).value;
  const ratio = (isShortGrain ? limits.wallShortGrainToDepth : limits.wallAlongGrainToDepth).value;
  const options: FixOption[] = [
    { do: 'widen', value: Math.ceil((limitMm - widthMm) * 100) / 100, unit: 'mm', clears: true },
  ];
  const depth = Math.floor((widthMm / ratio) * 100) / 100;
  if (widthMm >= least && depth < heightMm) {
    options.push({ do: 'cut-shallower', value: depth, unit: 'mm', clears: true });
  }
  return options;
}
