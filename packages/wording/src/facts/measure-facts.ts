import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { counted } from '../findings/parts-of-sentences.ts';
import { formatPercent, formatShare } from './amounts.ts';
import { boundedText } from './bounded-text.ts';
import { downText } from './cut-sentences.ts';
import { cutterFacts } from './cutter-facts.ts';
import { type Fact, fact } from './fact.ts';
import { fibreText } from './fibre-text.ts';
import { woodText } from './wood-text.ts';

/** Lengths that differ by less than this share are one: rounding. */
const ALL_REL_TOL = 1e-9;

/** The measures of artwork, cut, strokes and end grain. */
export function measureFacts(report: Report, unit: LengthUnit): readonly Fact[] {
  const { artwork, cut, strokes, endGrain } = report;
  const [left, top, right, bottom] = artwork.boundsMm;
  const area = (mm2: number, bound: number): string =>
    boundedText(mm2, bound, (each) => formatArea(each, unit));
  return [
    fact('Artwork', formatArea(artwork.areaMm2, unit), shapesText(artwork)),
    fact(
      'Size',
      `${formatLength(right - left, unit)} × ${formatLength(bottom - top, unit)}`,
      `size from ${artwork.scaleSource}`,
    ),
    cutFact(report, unit),
    fact(
      'Left standing',
      area(cut.leftStandingMm2, cut.errorBound.areaMm2),
      formatShare(cut.leftStandingMm2, artwork.areaMm2),
    ),
    ...cutterFacts(report, unit),
    wallFact(cut, unit),
    ...strokeFacts(strokes, unit),
    fact(
      'End grain exposed',
      formatArea(endGrain.wallExposedMm2 + endGrain.floorExposedMm2, unit),
      `${formatPercent(100 * endGrain.wallFraction)} of the walls`,
    ),
    ...endGrainByBlock(report, unit),
    ...woodLeft(report, unit),
  ];
}

/** Length and area of the walls, whose bounds rest on measuring alone. */
function wallFact({ wallLengthMm, wallAreaMm2, errorBound }: Report['cut'], unit: LengthUnit): Fact {
  const length = boundedText(wallLengthMm, errorBound.wallLengthMm, (mm) => formatLength(mm, unit));
  const area = boundedText(wallAreaMm2, errorBound.wallAreaMm2, (mm2) => formatArea(mm2, unit));
  const isBounded = `${length}${area}`.includes('±');
  return fact('Wall', length, `${area} of wall${isBounded ? '; ± measured, not proven' : ''}`);
}

/** The least wood that the cut leaves of a board that is known. */
function woodLeft({ board }: Report, unit: LengthUnit): readonly Fact[] {
  if (board === undefined) {
    return [];
  }
  const { leastFloor, leastOverHole, leastRim } = board;
  return [
    ...(leastFloor === null
      ? []
      : [
          fact(
            'Wood under the cut',
            formatLength(leastFloor.woodMm, unit),
            `common practice leaves ${formatLength(leastFloor.leastMm, unit)} of this board`,
          ),
        ]),
    ...(leastOverHole === null
      ? []
      : [
          fact(
            '  over a hole in the back',
            formatLength(leastOverHole.woodMm, unit),
            `common practice leaves ${formatLength(leastOverHole.leastMm, unit)}`,
          ),
        ]),
    ...(leastRim === null
      ? []
      : [
          fact(
            'Least rim',
            formatLength(leastRim.woodMm, unit),
            leastRim.beside === 'edge' ? 'to an edge of the board' : 'to a hole or groove beside the cut',
          ),
        ]),
  ];
}

/** Strokes by width and length. Where all is taper there is no narrowest stroke but a narrow end. */
function strokeFacts(strokes: Report['strokes'], unit: LengthUnit): readonly Fact[] {
  const { narrowestMm, narrowestToBit, lengthMm, tapers } = strokes;
  const length = fact('Strokes', formatLength(lengthMm, unit), 'along their middle');
  if (tapers !== null && tapers.lengthMm >= lengthMm * (1 - ALL_REL_TOL)) {
    return [fact('Narrowest stroke', 'none', `all is taper ${downText(tapers, unit)}`), length];
  }
  return [
    fact(
      'Narrowest stroke',
      narrowestMm === null ? 'none' : formatLength(narrowestMm, unit),
      narrowestToBit === null ? '' : `${narrowestToBit.toFixed(2)} × the smallest bit`,
    ),
    length,
    ...(tapers === null
      ? []
      : [fact('  tapers', formatLength(tapers.lengthMm, unit), `of it, ${downText(tapers, unit)}`)]),
  ];
}

/** The cut, with what its bound says, if one is shown, and what it leaves out. */
function cutFact({ cut }: Report, unit: LengthUnit): Fact {
  const area = boundedText(cut.areaMm2, cut.errorBound.areaMm2, (each) => formatArea(each, unit));
  const bound = area.includes('±') ? '± by how curves became short straight lines, at most' : '';
  return fact(
    'Cut',
    area,
    cut.onlyAsDrawnMm2 === undefined
      ? bound
      : `${formatArea(cut.onlyAsDrawnMm2, unit)} of it only if drawn no narrower than the bit`,
  );
}

function shapesText({ regions, holes }: Report['artwork']): string {
  const inside = holes === 0 ? 'no holes' : counted(holes, 'hole');
  return `${counted(regions, 'separate shape')} with ${inside}`;
}

/** Exposed end grain in each kind of block, where there is more than one kind. */
function endGrainByBlock({ endGrain: { byBlock } }: Report, unit: LengthUnit): readonly Fact[] {
  if (byBlock.length < 2) {
    return [];
  }
  return byBlock.map(({ blocks, grainDeg, diveDeg, wallExposedMm2, floorExposedMm2, ...wood }) =>
    fact(
      `  ${woodText(wood)}`,
      formatArea(wallExposedMm2 + floorExposedMm2, unit),
      `${counted(blocks, 'block')}, fibres ${fibreText(grainDeg, diveDeg)}`,
    ),
  );
}
