import {
  type AssumedDensity,
  cureSpeed,
  largestMixG,
  mixByMass,
  type PourLayers,
  pourLayers,
  type Resin,
  type Scale,
  smallestBatchG,
  smallestTrueMixG,
} from '@pourproof/materials';
import { type BatchCount, batchCount } from './batch-count.ts';
import { type FillBudget, withDensity, withGeometry } from './fill-budget.ts';
import { type PrintedParts, partsThatAddUp } from './parts-that-add-up.ts';

/** A fill of one colour on one board. */
export interface ColourFill {
  readonly name: string;
  /** Id of its resin colour or `#rrggbb`; `null` where nobody said. */
  readonly resin: string | null;
  readonly budget: FillBudget;
  /** Pockets and letters of this colour on one board. */
  readonly pockets: number;
  /** Greatest depth of its cut, mm. */
  readonly depthMm: number;
}

/** What turns fills into cups. */
export interface PourTerms {
  readonly resin: Resin;
  readonly scale: Scale;
  readonly wastePct: number;
  readonly pigmentPct: number;
  readonly overpourMm: number;
  readonly boards: number;
  readonly shopTempC: number;
  /** Price of a gram of mixed resin in the maker's currency; `null` if not known. */
  readonly pricePerG: number | null;
}

/** What to weigh out for one colour on all boards. */
export interface ColourPour {
  readonly name: string;
  readonly resin: string | null;
  readonly budget: FillBudget;
  /** Volume to mix, ml, and the waste in it. */
  readonly volumeMl: number;
  readonly wasteMl: number;
  /** Mixed resin without pigment, and its parts, unrounded. */
  readonly massG: number;
  readonly partAG: number;
  readonly partBG: number;
  readonly pigmentG: number;
  readonly uncertaintyPct: number;
  /** Densities taken from defaults of the resin's class. */
  readonly assumed: readonly AssumedDensity[];
  readonly count: BatchCount;
  /** Pockets and letters of this colour on all boards. */
  readonly pockets: number;
  /** One cup: part A, part B and pigment in whole steps of the scale. All cups of a colour are equal. */
  readonly cup: PrintedParts;
  readonly layers: PourLayers;
  readonly price: number | null;
}

/** A pour of all colours. */
export interface PourPlan {
  readonly colours: readonly ColourPour[];
  /** Smallest batch that the scale can split within the ratio's tolerance, with the cup left on the scale. */
  readonly smallestBatchG: number;
  /** The same with the display set to zero between the parts. */
  readonly smallestZeroedG: number;
  /** Smallest mix that can be stirred true, however it is weighed. */
  readonly smallestTrueG: number;
  /** Layers of the deepest colour. */
  readonly layers: PourLayers;
  readonly price: number | null;
}

/**
 * What to weigh, in how many cups and layers, for all boards at once.
 *
 * Cups of a colour are equal and in whole steps of the scale, so that the sheet adds up exactly.
 * @throws {RangeError} when the resin has no ratio
 */
export function pourPlan(fills: readonly ColourFill[], terms: PourTerms): PourPlan {
  const smallest = smallestOf(terms, false);
  const colours = fills.map((fill) => colourPour(fill, terms, smallest));
  const deepest = Math.max(0, ...fills.map((fill) => fill.depthMm));
  return {
    colours,
    smallestBatchG: smallest,
    smallestZeroedG: smallestOf(terms, true),
    smallestTrueG: smallestTrueMixG(
      terms.resin.ratioTolerancePct.value,
      terms.resin.densityMixedGPerMl.value,
    ),
    layers: layersOf(deepest, terms),
    price: terms.pricePerG === null ? null : colours.reduce((sum, each) => sum + (each.price ?? 0), 0),
  };
}

/** A plan with a bound of the error of the volume of all colours of one board, which they share as they share what was planned for it. */
export function withVolumeError(plan: PourPlan, errorMm3: number): PourPlan {
  const geometryOf = ({ budget }: ColourPour): number =>
    budget.items.find(({ cause }) => cause === 'geometry')?.moreMl ?? 0;
  const all = plan.colours.reduce((sum, colour) => sum + geometryOf(colour), 0);
  const colours = plan.colours.map((colour) => {
    const share = all > 0 ? geometryOf(colour) / all : 1 / plan.colours.length;
    const budget = withGeometry(colour.budget, (share * errorMm3) / 1000);
    return { ...colour, budget, uncertaintyPct: budget.uncertaintyPct };
  });
  return { ...plan, colours };
}

function smallestOf({ resin, scale }: PourTerms, zeroedBetween: boolean): number {
  return smallestBatchG({
    resolutionG: scale.resolutionG.value,
    ratio: mixByMass({ volumeMl: 0, wastePct: 0 }, resin).ratioByWeight,
    tolerancePct: resin.ratioTolerancePct.value,
    zeroedBetween,
  });
}

function layersOf(depthMm: number, { resin, overpourMm }: PourTerms): PourLayers {
  return pourLayers(depthMm > 0 ? depthMm + overpourMm : 0, resin.deepestPourMm.value);
}

function colourPour(fill: ColourFill, terms: PourTerms, smallestG: number): ColourPour {
  const { resin, scale, boards, pricePerG } = terms;
  const { budget } = fill;
  const mix = mixByMass(
    {
      volumeMl: boards * (budget.cutMl + budget.uptakeMl),
      overpourMl: boards * budget.overpourMl,
      wastePct: terms.wastePct,
    },
    resin,
  );
  const whole = withDensity(budget, mix.massMayBe);
  const workingMinutes = resin.potLifeMin.value / cureSpeed(terms.shopTempC);
  const layers = layersOf(fill.depthMm, terms);
  const count = batchCount(
    boards * fill.pockets,
    workingMinutes,
    mix.massG,
    smallestG,
    Math.max(1, layers.count),
    Math.min(largestMixG(resin, terms.shopTempC), scale.capacityG?.value ?? Number.POSITIVE_INFINITY),
  );
  const pigmentG = (mix.massG * terms.pigmentPct) / 100;
  const cup = partsThatAddUp(
    [mix.partAG, mix.partBG, pigmentG].map((grams) => grams / count.batches),
    scale.resolutionG.value,
  );
  return {
    name: fill.name,
    resin: fill.resin,
    budget: whole,
    volumeMl: mix.volumeMl,
    wasteMl: mix.wasteMl,
    massG: mix.massG,
    partAG: mix.partAG,
    partBG: mix.partBG,
    pigmentG,
    uncertaintyPct: whole.uncertaintyPct,
    assumed: mix.assumed,
    count,
    pockets: boards * fill.pockets,
    cup,
    layers,
    price: pricePerG === null ? null : mix.massG * pricePerG,
  };
}
