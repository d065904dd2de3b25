import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { formatPercent, formatShare } from './amounts.ts';
import { cutterFacts } from './cutter-facts.ts';
import { type Fact, fact } from './fact.ts';
import { fibreText } from './fibre-text.ts';

/** The measures of artwork, cut, strokes and end grain. */
export function measureFacts(report: Report, unit: LengthUnit): readonly Fact[] {
  const { artwork, cut, strokes, endGrain } = report;
  const [left, top, right, bottom] = artwork.boundsMm;
  const narrowest = strokes.narrowestMm;
  return [
    fact('Artwork', formatArea(artwork.areaMm2, unit), shapesText(artwork)),
    fact(
      'Size',
      `${formatLength(right - left, unit)} × ${formatLength(bottom - top, unit)}`,
      `size from ${artwork.scaleSource}`,
    ),
    fact('Cut', formatArea(cut.areaMm2, unit), `± ${formatArea(cut.errorBound.areaMm2, unit)} at most`),
    fact(
      'Left standing',
      formatArea(cut.leftStandingMm2, unit),
      formatShare(cut.leftStandingMm2, artwork.areaMm2),
    ),
    ...cutterFacts(report, unit),
    fact('Wall', formatLength(cut.wallLengthMm, unit), `${formatArea(cut.wallAreaMm2, unit)} of wall`),
    fact(
      'Narrowest stroke',
      narrowest === null ? 'none' : formatLength(narrowest, unit),
      strokes.narrowestToBit === null ? '' : `${strokes.narrowestToBit.toFixed(2)} × the smallest bit`,
    ),
    fact('Strokes', formatLength(strokes.lengthMm, unit), 'along their middle'),
    fact(
      'End grain open',
      formatArea(endGrain.wallExposedMm2 + endGrain.floorExposedMm2, unit),
      `${formatPercent(100 * endGrain.wallFraction)} of the walls`,
    ),
    ...endGrainByBlock(report, unit),
  ];
}

function shapesText({ regions, holes }: Report['artwork']): string {
  const inside = holes === 0 ? 'no holes' : `${holes} ${holes === 1 ? 'hole' : 'holes'}`;
  return `${regions} separate ${regions === 1 ? 'shape' : 'shapes'} with ${inside}`;
}

/** Open end grain in each kind of block, where there is more than one kind. */
function endGrainByBlock({ endGrain: { byBlock } }: Report, unit: LengthUnit): readonly Fact[] {
  if (byBlock.length < 2) {
    return [];
  }
  return byBlock.map(({ species, blocks, grainDeg, diveDeg, wallExposedMm2, floorExposedMm2 }) =>
    fact(
      `  ${species}`,
      formatArea(wallExposedMm2 + floorExposedMm2, unit),
      `${blocks} ${blocks === 1 ? 'block' : 'blocks'}, fibres ${fibreText(grainDeg, diveDeg)}`,
    ),
  );
}
