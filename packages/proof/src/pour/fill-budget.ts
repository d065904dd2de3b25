import type { CitedRange } from '@pourproof/materials';

/** Causes of uncertainty of a fill's volume. */
export type BudgetItemId =
  | 'geometry'
  | 'depth'
  | 'seal-film'
  | 'overpour'
  | 'end-grain'
  | 'shrinkage'
  | 'density';

/** How much one cause may take off or add to the fill, ml, both 0 or more. */
export interface BudgetItem {
  readonly cause: BudgetItemId;
  readonly lessMl: number;
  readonly moreMl: number;
}

/** A fill in ml with its uncertainty; the waste of the cup is not included. */
export interface FillBudget {
  /** Volume of the cut, less the seal film. */
  readonly cutMl: number;
  /** Resin proud of the face. */
  readonly overpourMl: number;
  /** Half of the upper bound on what end grain takes up. */
  readonly uptakeMl: number;
  readonly items: readonly BudgetItem[];
  /** Larger side of the fill's uncertainty, percent of it; 0 for an empty cut. */
  readonly uncertaintyPct: number;
}

/** What a fill budget is made from, in mm, mm² and mm³. */
export interface FillMeasures {
  readonly cutAreaMm2: number;
  readonly volumeMm3: number;
  /** Walls and floor that the seal coats. */
  readonly sealedMm2: number;
  /** Bound on the error of the volume from flattened curves. */
  readonly volumeErrorMm3: number;
  /** Error of the depth: setting of the bit, and flatness of the board if it was measured. */
  readonly depthErrorMm: number;
  /** Film on walls and floor. */
  readonly film: { readonly filmMm: number; readonly lowMm: number; readonly highMm: number };
  readonly overpourMm: number;
  /** Range of overpour in practice, with its usual value. */
  readonly overpourRange: CitedRange;
  /** Upper bound on what end grain takes up, ml. */
  readonly uptakeMl: number;
  readonly shrinkagePct: CitedRange;
}

/**
 * The volume of one fill, ml, and the causes of its uncertainty.
 *
 * Causes count as independent: each side is the root of the sum of squares. End grain takes up anything from
 * nothing to its upper bound, so half of the bound is in the fill, with half either way as uncertainty.
 * Shrinkage takes nothing off the mix; it asks for a top-up.
 */
export function fillBudget(measures: FillMeasures): FillBudget {
  const { cutAreaMm2, volumeMm3, film, overpourMm, overpourRange } = measures;
  const filmMl = (thickness: number): number => Math.min(volumeMm3, thickness * measures.sealedMm2) / 1000;
  const cutMl = volumeMm3 / 1000 - filmMl(film.filmMm);
  const overpourMl = (cutAreaMm2 * overpourMm) / 1000;
  const shareLow = overpourRange.low / overpourRange.value;
  const shareHigh = overpourRange.high / overpourRange.value;
  const depthMl = (measures.depthErrorMm * cutAreaMm2) / 1000;
  const uptakeMl = measures.uptakeMl / 2;
  const items: BudgetItem[] = [
    both('geometry', measures.volumeErrorMm3 / 1000),
    both('depth', Math.min(depthMl, volumeMm3 / 1000)),
    {
      cause: 'seal-film',
      lessMl: filmMl(film.highMm) - filmMl(film.filmMm),
      moreMl: filmMl(film.filmMm) - filmMl(film.lowMm),
    },
    { cause: 'overpour', lessMl: overpourMl * (1 - shareLow), moreMl: overpourMl * (shareHigh - 1) },
    both('end-grain', uptakeMl),
    { cause: 'shrinkage', lessMl: 0, moreMl: (cutMl * measures.shrinkagePct.high) / 100 },
  ];
  const fillMl = cutMl + overpourMl + uptakeMl;
  return { cutMl, overpourMl, uptakeMl, items, uncertaintyPct: uncertaintyPct(items, fillMl) };
}

/**
 * A budget in which the densities that were assumed count: what the grams may be too few or too many by, as volume.
 *
 * @param massMayBe shares that the mix may be lighter or heavier by
 */
export function withDensity(
  budget: FillBudget,
  massMayBe: { readonly less: number; readonly more: number },
): FillBudget {
  const fillMl = budget.cutMl + budget.overpourMl + budget.uptakeMl;
  const items: readonly BudgetItem[] = [
    ...budget.items,
    { cause: 'density', lessMl: fillMl * massMayBe.less, moreMl: fillMl * massMayBe.more },
  ];
  return { ...budget, items, uncertaintyPct: uncertaintyPct(items, fillMl) };
}

/** A budget with another error of the volume from flattened curves, ml. */
export function withGeometry(budget: FillBudget, errorMl: number): FillBudget {
  const items = budget.items.map((item) => (item.cause === 'geometry' ? both('geometry', errorMl) : item));
  return {
    ...budget,
    items,
    uncertaintyPct: uncertaintyPct(items, budget.cutMl + budget.overpourMl + budget.uptakeMl),
  };
}

function uncertaintyPct(items: readonly BudgetItem[], fillMl: number): number {
  const spread = Math.max(
    Math.hypot(...items.map((item) => item.lessMl)),
    Math.hypot(...items.map((item) => item.moreMl)),
  );
  return fillMl > 0 ? (100 * spread) / fillMl : 0;
}

function both(cause: BudgetItemId, ml: number): BudgetItem {
  return { cause, lessMl: ml, moreMl: ml };
}
