import { bitSize } from '@pourproof/job';
import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { formatShare } from './amounts.ts';

/** A cut whose floor falls short of it by no more than this share is level all over. */
const LEVEL_REL_TOL = 1e-9;

/** What will be cut and what not, in one sentence each. */
export function cutSentences(report: Report, unit: LengthUnit): readonly string[] {
  const { artwork, cut, strokes } = report;
  if (cut.areaMm2 === 0) {
    return [
      `None of the ${formatArea(artwork.areaMm2, unit)} drawn will be cut: no bit of the job fits anywhere in it.`,
    ];
  }
  const sentences = [
    `Of ${formatArea(artwork.areaMm2, unit)} drawn, ${formatArea(cut.areaMm2, unit)} will be cut (${formatShare(cut.areaMm2, artwork.areaMm2)}), ${deepText(report, unit)} deep.`,
  ];
  const standing = formatArea(cut.leftStandingMm2, unit);
  // specks that print as nothing are not worth a sentence
  if (standing !== formatArea(0, unit)) {
    sentences.push(
      `${standing} of it stays wood, because no bit of the job fits there; that includes the rounded inside corners that any bit leaves.`,
    );
  }
  if (strokes.lengthNarrowerThanBitMm > 0) {
    sentences.push(
      `${formatLength(strokes.lengthNarrowerThanBitMm, unit)} of ${formatLength(strokes.lengthMm, unit)} of stroke is narrower than the smallest bit${taperText(strokes, unit)}.`,
    );
  }
  return sentences;
}

/** A pocket with upright walls has one depth, but not in several rounds; between other walls narrow strokes and edges are shallower. */
function deepText({ cut: { areaMm2, floorAreaMm2, maxDepthMm }, rounds }: Report, unit: LengthUnit): string {
  if (floorAreaMm2 === 0) {
    return `up to ${formatLength(maxDepthMm, unit)}`;
  }
  const isLevel = rounds === undefined && floorAreaMm2 > areaMm2 * (1 - LEVEL_REL_TOL);
  return `${isLevel ? '' : 'up to '}${bitSize(maxDepthMm, unit)}`;
}

/** How much of that is taper, and how narrow tapers get. */
function taperText({ tapers, lengthNarrowerThanBitMm }: Report['strokes'], unit: LengthUnit): string {
  const narrow = formatLength(tapers?.lengthNarrowerThanBitMm ?? 0, unit);
  if (tapers === null || narrow === formatLength(0, unit)) {
    return '';
  }
  const isAll = narrow === formatLength(lengthNarrowerThanBitMm, unit);
  return `, ${isAll ? 'all' : narrow} of it in tapers ${downText(tapers, unit)}`;
}

/** How narrow tapers get, where they do not run out to nothing. */
export function downText(
  { narrowestMm, widestMm }: { readonly narrowestMm: number; readonly widestMm: number },
  unit: LengthUnit,
): string {
  const least = formatLength(narrowestMm, unit);
  return `from ${formatLength(widestMm, unit)} down to ${least === formatLength(0, unit) ? 'a point' : least}`;
}
