import { type Job, type JobInput, widestMm } from '@pourproof/job';
import { parseLengthMm } from '@pourproof/plane';
import type { Finding, FixStep } from '@pourproof/proof';
import type { Candidate } from './candidate.ts';
import type { RemedyPart } from './remedies.ts';

/** Step of what is done to outlines (our choice: about what a sheet shows), and digits of it. */
const STEPS = { mm: { step: 0.05, digits: 2 }, in: { step: 0.002, digits: 3 } } as const;
/** What a formula proposes is sought up to this many times (our choice). */
const MOST = 3;

/** Settings of changed outlines, lengths in mm. */
type OutlineSetting = 'widen' | 'leastStroke' | 'roundTips' | 'roundCorners' | 'colourWall';

/** How an outline setting is changed: from a value by steps. */
interface Amount {
  readonly part: RemedyPart;
  readonly setting: OutlineSetting;
  readonly fromMm: number;
  /** By how much a formula says that it has to change. */
  readonly byMm: number;
  /** How far it is sought, as a multiple of that. */
  readonly most?: number;
}

/** What can be done to the outlines about a finding whose way out is work on the drawing. */
export function outlineCandidates(
  job: JobInput,
  settled: Job,
  finding: Finding,
  step: FixStep,
): readonly Candidate[] {
  const { units } = settled;
  const unitMm = parseLengthMm(`1${units}`);
  const { step: by, digits } = STEPS[units];
  return amountsOf(settled, finding, step).map(({ part, setting, fromMm, byMm, most = MOST }) => {
    const sign = Math.sign(byMm);
    // from a whole step on
    const from = Math.floor(fromMm / unitMm / by + 1e-9);
    const guess = Math.max(1, Math.ceil(Math.abs(fromMm + byMm - from * by * unitMm) / unitMm / by - 1e-9));
    return {
      part,
      guess,
      most: Math.ceil(most * guess),
      at: (steps: number): JobInput => ({
        ...job,
        [setting]: `${Number(((from + sign * steps) * by).toFixed(digits))}${units}`,
      }),
    };
  });
}

function amountsOf(settled: Job, finding: Finding, step: FixStep): readonly Amount[] {
  const { widenMm = 0, roundTipsMm = 0, colourWallMm = 0 } = settled.outlines;
  switch (step.do) {
    case 'widen':
      return step.what === 'wood'
        ? [
            { part: 'stroke', setting: 'widen', fromMm: widenMm, byMm: -step.byMm },
            ...thinWood(settled, finding),
          ]
        : [
            { part: 'stroke', setting: 'widen', fromMm: widenMm, byMm: step.byMm },
            ...thinStrokes(settled, finding),
          ];
    case 'part-by-wall':
      return [{ part: 'walls', setting: 'colourWall', fromMm: colourWallMm, byMm: step.widthMm }];
    case 'redraw-ends': {
      // what a bit cannot reach is what has a smaller radius than it
      const radius = Math.min(...settled.bits.map((bit) => widestMm(bit) / 2));
      const isEnough = radius <= roundTipsMm || settled.bits.some(({ kind }) => kind === 'vee');
      return isEnough
        ? []
        : [{ part: 'tips', setting: 'roundTips', fromMm: roundTipsMm, byMm: radius - roundTipsMm, most: 1 }];
    }
    default:
      return [];
  }
}

/** Only the strokes that are too thin: up to what the finding asks for, from what the narrowest is. */
function thinStrokes({ outlines }: Job, { measured, limit }: Finding): readonly Amount[] {
  if (measured.unit !== 'mm' || limit.unit !== 'mm' || measured.quantity !== 'width') {
    return [];
  }
  const now = outlines.leastStrokeMm ?? 0;
  const fromMm = Math.max(now, Math.min(measured.value, limit.value));
  if (limit.value <= fromMm) {
    return [];
  }
  return [{ part: 'stroke', setting: 'leastStroke', fromMm, byMm: limit.value - fromMm }];
}

/** Thin wood that only runs into a corner between two strokes is poured as well when that corner is rounded. */
function thinWood({ outlines }: Job, { code, limit }: Finding): readonly Amount[] {
  const { roundCornersMm = 0 } = outlines;
  return code === 'short-grain-will-break' && limit.unit === 'mm'
    ? [
        {
          part: 'corners',
          setting: 'roundCorners',
          fromMm: roundCornersMm,
          byMm: limit.value / 2,
          most: 2 * MOST,
        },
      ]
    : [];
}
