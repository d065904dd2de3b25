import { levelMethods } from '@pourproof/materials';
import { formatArea, formatLength, formatVolume, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { LEVELLING_WORDS } from '../advice/levelling-words.ts';
import { SHOP_ADVICE_WORDS } from '../advice/shop-advice-words.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import { formatMass, formatPercent } from './amounts.ts';
import { colourName } from './colour-name.ts';
import { type Fact, fact } from './fact.ts';
import { woodText } from './wood-text.ts';

type Pour = Report['pour'];
type Colour = Pour['colours'][number];

/**
 * Grams of the cup for which makers usually state pot lives (common practice; the data sheet says); more
 * heats itself and thickens sooner.
 */
const POT_LIFE_CUP_G = 100;
/** Step that sealer is told in: nobody weighs it closer. */
const SEALER_STEP_G = 0.1;

/**
 * What to mix and how to pour it, what the seal takes, what levelling may take, and how far colour may
 * travel.
 */
export function resinFacts(report: Report, unit: LengthUnit): readonly Fact[] {
  const { pour } = report;
  if (report.cut.areaMm2 === 0) {
    return [fact('Mix', 'none', 'nothing will be cut, so there is nothing to fill')];
  }
  return [
    ...pour.colours.flatMap((colour) => colourFacts(colour, pour, unit)),
    ...sealFacts(report, unit),
    ...levellingFacts(report, unit),
    ...bleedFacts(report, unit),
  ];
}

function sealFacts({ seal }: Report, unit: LengthUnit): readonly Fact[] {
  if (seal.filmMm === 0) {
    return [];
  }
  const facts = [
    fact('Seal film', formatLength(seal.filmMm, unit), 'on walls and floor'),
    fact('Sealer', formatMass(seal.massG, SEALER_STEP_G), 'liquid, for the walls and floors of one board'),
  ];
  if (seal.ghostLengthMm > 0 && seal.ghostBelowMm !== null) {
    facts.push(
      fact(
        'Ghost strokes',
        formatLength(seal.ghostLengthMm, unit),
        `of stroke is narrower than ${formatLength(seal.ghostBelowMm, unit)} and fills with clear seal alone`,
      ),
    );
  }
  return facts;
}

function levellingFacts({ levelling, endGrain }: Report, unit: LengthUnit): readonly Fact[] {
  const { planMm, marginMm, methodMm, flatness, strokesMm, areas } = levelling;
  const { name: method } = levelMethods[levelling.method];
  const facts = [
    fact('Levelling', formatLength(planMm, unit), `${method}. ${LEVELLING_WORDS[levelling.method]}`),
    fact(
      'Can come off',
      marginMm === null ? '–' : formatLength(marginMm, unit),
      `before the first of it is gone; ${method} usually takes off ${formatLength(methodMm.low, unit)} to ${formatLength(methodMm.high, unit)}`,
    ),
  ];
  if (areas.lost + areas.spoilt > 0) {
    facts.push(
      fact(
        '  areas at risk',
        `${areas.lost + areas.spoilt} of ${areas.lost + areas.spoilt + areas.close + areas.holds}`,
        `under this plan: ${areas.lost} lose all colour, ${areas.spoilt} become too shallow or too narrow`,
      ),
    );
  }
  if (strokesMm.lost + strokesMm.spoilt > 0) {
    facts.push(
      fact(
        '  strokes at risk',
        formatLength(strokesMm.lost + strokesMm.spoilt, unit),
        `under this plan: ${formatLength(strokesMm.lost, unit)} lose all colour, ${formatLength(strokesMm.spoilt, unit)} become too narrow or too shallow`,
      ),
    );
  }
  if (endGrain.wallExposedMm2 > 0) {
    facts.push(fact('  bleed', 'stays', SHOP_ADVICE_WORDS['bleed-stays']));
  }
  if (flatness !== undefined) {
    facts.push(
      fact(
        'Face not flat by',
        formatLength(flatness.rangeMm, unit),
        `under the cut; your readings lie within ${formatLength(flatness.residualMm, unit)} of the fitted surface`,
      ),
    );
    if (flatness.veeWidthMm !== undefined) {
      const { narrowerBy, widerBy } = flatness.veeWidthMm;
      facts.push(
        fact(
          '  V strokes',
          `${formatLength(narrowerBy, unit)} narrower`,
          `at the lowest place and ${formatLength(widerBy, unit)} wider at the highest, at most`,
        ),
      );
    }
  }
  return facts;
}

function bleedFacts({ bleed }: Report, unit: LengthUnit): readonly Fact[] {
  const facts = bleed.blocks.flatMap(({ travelMm: { median, low, high }, ...block }) => [
    fact(
      'Colour may travel',
      formatLength(median, unit),
      `along the fibres of ${woodText(block)}; ${likely(formatLength(low, unit), formatLength(high, unit))} (${basisText(block)})`,
    ),
    fact(
      '  face at risk',
      formatArea(block.areaMm2, unit),
      `beside the cut; ${likely(formatArea(block.areaLowMm2, unit), formatArea(block.areaHighMm2, unit))}`,
    ),
    boundFact(block.bounds, unit),
    ...slotFacts(block),
  ]);
  return bleed.couponsUnused.length === 0 ? facts : [...facts, unusedFact(bleed)];
}

/** Which of the two laws may stop a streak sooner: they bound it, and no length is theirs. */
function boundFact(
  { viscosityMm, trappedAirMm, governs }: Report['bleed']['blocks'][number]['bounds'],
  unit: LengthUnit,
): Fact {
  const length = (mm: number): string => formatLength(mm, unit);
  const air =
    trappedAirMm === null
      ? 'the vessels run through the board, so that no air is trapped'
      : `trapped air at ${length(trappedAirMm)}`;
  return fact(
    '  stopped by',
    governs === 'viscosity' ? 'resin that sets' : 'trapped air',
    `an upper bound, by inference: resin that sets in a thin layer, which takes longer than in a full cup, at ${length(viscosityMm.value)} (${length(viscosityMm.low)} to ${length(viscosityMm.high)} by its gel time); ${air}`,
  );
}

/** What the slots of this board say by their count alone: few clean slots prove little. */
function slotFacts({ ownSlots }: Pick<Report['bleed']['blocks'][number], 'ownSlots'>): readonly Fact[] {
  if (ownSlots === undefined) {
    return [];
  }
  const { slots, bleeding, chanceUpper95 } = ownSlots;
  return [
    fact(
      '  slots that bleed',
      `${bleeding} of ${slots}`,
      `going by this count alone, the chance that the next slot bleeds may be as high as ${formatPercent(100 * chanceUpper95)}`,
    ),
  ];
}

function unusedFact({ couponsUnused }: Report['bleed']): Fact {
  const rows = (why: string): string =>
    couponsUnused.flatMap((each) => (each.why === why ? [each.row] : [])).join(', ');
  const [wood, board] = [rows('other-wood'), rows('one-other-board')];
  return fact(
    'Coupons not used',
    String(couponsUnused.length),
    [
      ...(wood === '' ? [] : [`row ${wood}: the cut meets no such wood`]),
      ...(board === '' ? [] : [`row ${board}: a single other board says too little about the wood`]),
    ].join('; '),
  );
}

/** A band of printed amounts; one too narrow for its digits is not printed as two equal numbers. */
function likely(low: string, high: string): string {
  return low === high ? 'no more is likely' : `${low} to ${high} is likely`;
}

/** Masses are whole steps of the scale, so that parts add up to the total as printed. */
function colourFacts(colour: Colour, pour: Pour, unit: LengthUnit): readonly Fact[] {
  const { cups, layers } = colour;
  const label =
    pour.colours.length === 1
      ? ''
      : ` (${colourName(
          colour.name,
          pour.colours.map(({ name }) => name),
        )})`;
  const mass = (grams: number): string => formatMass(grams, pour.stepG);
  const boards = pour.boards === 1 ? '' : ` for ${pour.boards} boards`;
  const rows = [
    fact(
      `Mix${label}`,
      mass(colour.massG),
      `${formatVolume(colour.volumeMl * 1000, unit)}${boards}, including ${formatLength(pour.overpourMm, unit)} proud of the face and ${formatVolume(colour.wasteMl * 1000, unit)} that stays in the cup; the fill may be off by ${formatPercent(colour.uncertaintyPct)}`,
    ),
    fact(
      `  part A${label}`,
      mass(colour.partAG),
      `by weight, even where the label gives the ratio by volume${assumedText(colour)}`,
    ),
    fact(`  part B${label}`, mass(colour.partBG), ''),
  ];
  if (colour.pigmentG > 0) {
    rows.push(fact(`  pigment${label}`, mass(colour.pigmentG), 'on top of the mix'));
  }
  // pigment that is none, or less than the scale shows, changes no reading
  const readings = colour.pigmentG > 0 ? cups.runningG : cups.runningG.slice(0, 2);
  rows.push(
    fact(
      `Cups${label}`,
      String(cups.count),
      `${perLayerText(cups.count, layers.count)}${cups.count === 1 ? '' : 'each '}on a scale zeroed with the empty cup: ${readings.map(mass).join(', then ')}`,
    ),
    fact(
      `Pour${label}`,
      counted(layers.count, 'layer'),
      `of ${formatLength(layers.eachMm, unit)}, overpour included; the mix stays workable for about ${Math.round(cups.workingMinutes)} min${cups.totalG > POT_LIFE_CUP_G ? ` in a cup of ${POT_LIFE_CUP_G} g, less in a fuller one` : ''}`,
    ),
  );
  if (cups.partAG + cups.partBG < pour.smallestBatchG) {
    rows.push(
      fact(
        `  least on this scale${label}`,
        formatMass(Math.ceil(pour.smallestBatchG / SEALER_STEP_G) * SEALER_STEP_G, SEALER_STEP_G),
        'that it weighs accurately, adding up; a finer one weighs less',
      ),
    );
  }
  if (colour.price !== undefined) {
    rows.push(fact(`Price${label}`, colour.price.toFixed(2), 'in your money'));
  }
  return rows;
}

/** Grams are only as good as the densities that they are made from. */
function assumedText({ assumed }: Colour): string {
  return assumed.length === 0
    ? ''
    : assumed.includes('densityMixed')
      ? '; the density of the mix is assumed, so take it from the label'
      : `; ${assumed.length === 2 ? 'the densities of both parts are' : `the density of part ${assumed[0] === 'densityA' ? 'A' : 'B'} is`} assumed, so take ${assumed.length === 2 ? 'them' : 'it'} from the label`;
}

/** Layers are hours apart: what is mixed for one is hard before the next. */
function perLayerText(cups: number, layers: number): string {
  if (layers < 2) {
    return '';
  }
  return cups === layers ? 'one for each layer, ' : `${cups / layers} for each layer, `;
}

function basisText({
  basis,
  coupons,
  slots,
}: Pick<Report['bleed']['blocks'][number], 'basis' | 'coupons' | 'slots'>): string {
  if (basis === 'prior') {
    return 'prior, not measured on your board';
  }
  return `calibrated with ${counted(coupons, 'coupon')}, ${counted(slots, 'slot')}`;
}
