import { bitSize, bitText } from '@pourproof/job';
import { formatArea, formatLength, formatVolume, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { formatMass } from './amounts.ts';
import { colourName } from './colour-name.ts';
import { type Fact, fact } from './fact.ts';

/** A face that rises and falls by less is flat, mm: no shop reads closer. */
const FLAT_MM = 0.005;

/** What each round of carving and pouring does, where there are several. */
export function roundFacts({ rounds = [], pour }: Report, unit: LengthUnit): readonly Fact[] {
  const all = pour.colours.map(({ name }) => name);
  return rounds.flatMap((round) => {
    const colours = round.colours.map((name) => colourName(name, all)).join(' and ');
    const wood = round.volumeMm3 - round.resinMm3;
    return [
      fact(
        `Round ${round.round}`,
        colours,
        `carve ${bitSize(round.depthMm, unit)} deep, seal, pour and cure; level before ${round.round < rounds.length ? `round ${round.round + 1} is carved` : 'the finish'}`,
      ),
      fact('  bits', bitsText(round, unit), ''),
      ...(round.faceRangeMm === undefined
        ? []
        : [
            fact(
              '  face',
              round.faceRangeMm < FLAT_MM ? 'flat' : formatLength(round.faceRangeMm, unit),
              round.round === 1
                ? 'is how much the heights that were read rise and fall under it'
                : round.faceRangeMm < FLAT_MM
                  ? 'for it was levelled before: the heights that were read hold for round 1 alone'
                  : 'of unevenness is left by the levelling before it, which takes off less than the board rises and falls',
            ),
          ]),
      fact(
        '  cut',
        formatArea(round.cutAreaMm2, unit),
        `${formatVolume(wood, unit)} of wood${round.resinMm3 > 0 ? ` and ${formatVolume(round.resinMm3, unit)} of cured resin` : ''}, ${minutesText(round.minutes)} on one board`,
      ),
      fact(
        '  mix',
        formatMass(round.massG, pour.stepG),
        `part A ${formatMass(round.partAG, pour.stepG)}, part B ${formatMass(round.partBG, pour.stepG)}`,
      ),
      fact(
        '  levelling',
        formatLength(round.levelledMm, unit),
        `comes off its colour ${levellingsText(rounds.length - round.round + 1)}; ${round.marginMm === null ? '–' : formatLength(round.marginMm, unit)} can come off before the first of it is gone`,
      ),
    ];
  });
}

/** The bits of each round in words; none where all is carved at once. */
export function bitsOfRounds({ rounds = [] }: Report, unit: LengthUnit): readonly string[] {
  return rounds.map((round) => bitsText(round, unit));
}

function bitsText({ cutters }: NonNullable<Report['rounds']>[number], unit: LengthUnit): string {
  return cutters.map((cutter) => bitText(cutter, unit)).join(', then ');
}

function minutesText(minutes: number): string {
  return minutes < 1 ? 'less than a minute' : `${Math.round(minutes)} min`;
}

function levellingsText(count: number): string {
  return count === 1 ? 'in one levelling' : `in ${count} levellings, its own and those of later rounds`;
}
