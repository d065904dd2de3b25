import { formatArea, type LengthUnit } from '@pourproof/plane';
import type { Finding } from '@pourproof/proof';
import type { FindingWords } from './finding-words.ts';
import { counted } from './parts-of-sentences.ts';

/** Words of outlines that cross. */
export const outlineCrosses: FindingWords = {
  title: 'Outlines cross',
  headline: ({ severity, measured, where }, { units }) => {
    if (severity === 'note') {
      return `Shapes overlap: their outlines cross in ${counted(measured.value, 'place')} and are cut as one.`;
    }
    const wood = woodText(where, units);
    return wood === ''
      ? `An outline crosses itself; ${counted(measured.value, 'crossing')} in all.`
      : `Outlines cross (${counted(measured.value, 'crossing')}), and where they overlap ${wood} stays wood.`;
  },
  why: ({ severity }) =>
    severity === 'note'
      ? 'Overlapping shapes are taken as one pocket, which is usually what is meant (joined script, stacked shapes).'
      : 'Inside an outline that crosses itself the fill rule decides what is cut and what stays wood, and drawing programs disagree there.',
  fixes: {
    'merge-shapes': ({ crossings }) =>
      `Merge the shapes at the ${counted(crossings, 'marked crossing')} if that is not what you mean.`,
  },
  counted: ['crossing', 'crossings'],
};

/** Area of what the overlaps leave as wood; empty where they leave none. */
function woodText(where: Finding['where'], unit: LengthUnit): string {
  const areaMm2 = where.reduce((sum, place) => sum + (place.what === 'wood' ? (place.areaMm2 ?? 0) : 0), 0);
  return areaMm2 > 0 ? formatArea(areaMm2, unit) : '';
}
