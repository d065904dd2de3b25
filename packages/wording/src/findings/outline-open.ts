import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Finding } from '@pourproof/proof';
import type { FindingWords } from './finding-words.ts';
import { noLess } from './way-length.ts';

/** Words of outlines that are not closed. */
export const outlineOpen: FindingWords = {
  title: 'An outline is open',
  headline: (finding, { units }) => {
    const { openOutlines, where } = finding;
    const widest = formatLength(Math.max(...where.map(({ lengthMm = 0 }) => lengthMm)), units);
    if (openOutlines === undefined) {
      return `${where.length === 1 ? 'One outline is' : `${where.length} outlines are`} open by up to ${widest} and filled as if a straight line closed ${where.length === 1 ? 'it' : 'them'}.`;
    }
    const { count } = openOutlines;
    return `${count === 1 ? 'One outline is' : `${count} outlines are`} open by up to ${widest} and left out: ${lostText(openOutlines, units)}.`;
  },
  why: ({ openOutlines }) =>
    openOutlines === undefined
      ? 'A pocket needs a closed outline. A straight line between the ends may not be what is meant.'
      : 'A pocket needs a closed outline. What an open one bounds is read as if it were not drawn.',
  fixes: {
    'join-ends': ({ toleranceMm, closes, areaMm2, clears }, { units }) =>
      `Read it with a joining tolerance of ${noLess(toleranceMm, units)} (--join): that closes ${clears ? (closes === 1 ? 'it' : `all ${closes}`) : `${closes} of them`}, around ${formatArea(areaMm2, units)}.`,
    'close-gap': ({ gapMm }, { units }) =>
      `Join the ends in the drawing (the widest gap is ${formatLength(gapMm, units)}), or draw the missing side, and vet it again.`,
  },
};

function lostText({ cutMm2, woodMm2 }: NonNullable<Finding['openOutlines']>, unit: LengthUnit): string {
  return [
    ...(cutMm2 > 0 ? [`${formatArea(cutMm2, unit)} that ought to be cut is not`] : []),
    ...(woodMm2 > 0 ? [`${formatArea(woodMm2, unit)} that ought to stay wood is cut`] : []),
  ].join(', and ');
}
