import { type Cited, cited } from './cited.ts';
import type { WoodId } from './wood.ts';

/** Shrinkage from green to oven-dry in percent, and movement per percent of moisture; `null` where no value was found. */
export interface Movement {
  readonly shrinkRadialPct: Cited | null;
  readonly shrinkTangentialPct: Cited | null;
  readonly shrinkVolumePct: Cited | null;
  /** Change of width per unit width and percent of moisture, 6 to 14 %, quarter-sawn. */
  readonly radialPerPct: Cited | null;
  /** The same for flat-sawn boards. */
  readonly tangentialPerPct: Cited | null;
}

type Triple = readonly [radial: number, tangential: number, volume: number];
type Pair = readonly [radial: number, tangential: number];

/** Movement by wood: FPL-GTR-190 tables 4-3, 4-4 and 13-5, or the page through which a row was read. */
export const woodMovements: Readonly<Record<WoodId, Movement>> = {
  poplar: {
    ...seen([4.6, 8.2, 12.7], null),
    radialPerPct: cited(0.00158, 'memory', 'wood-handbook-2010'),
    tangentialPerPct: cited(0.00289, 'memory', 'wood-handbook-2010'),
  },
  cherry: seen([3.7, 7.1, 11.5], [0.00126, 0.00248]),
  maple: {
    ...seen([4.8, 9.9, 14.7], [0.00165, 0.00353]),
    shrinkRadialPct: cited(4.8, 'seen', 'hard-maple-trade-page'),
    shrinkTangentialPct: cited(9.9, 'seen', 'hard-maple-trade-page'),
    shrinkVolumePct: cited(14.7, 'seen', 'hard-maple-trade-page'),
  },
  walnut: seen([5.5, 7.8, 12.8], [0.0019, 0.00274]),
  'red-maple': recalled([4.0, 8.2, 12.6], null),
  'white-oak': seen([5.6, 10.5, 16.3], [0.0018, 0.00365]),
  'red-oak': recalled([4.0, 8.6, 13.7], [0.00158, 0.00369]),
  ash: seen([4.9, 7.8, 13.3], [0.00169, 0.00274]),
  'shagbark-hickory': recalled([7.0, 10.5, 16.7], [0.00259, 0.00411]),
  'pecan-hickory': seen([4.9, 8.9, 13.6], [0.00169, 0.00315]),
  beech: seen([5.5, 11.9, 17.2], null),
  'yellow-birch': seen([7.3, 9.5, 16.8], [0.00256, 0.00338]),
  basswood: seen([6.6, 9.3, 15.8], null),
  alder: seen([4.4, 7.3, 12.6], null),
  mahogany: recalled([3.0, 4.1, 7.8], null),
  teak: recalled([2.5, 5.8, 7.0], null),
  purpleheart: recalled([3.2, 6.1, 9.9], null),
  padauk: {
    ...recalled([3, 5, 8], null),
    shrinkRadialPct: cited(3, 'seen', 'flooring-booklet'),
    shrinkTangentialPct: cited(5, 'seen', 'flooring-booklet'),
    shrinkVolumePct: cited(8, 'seen', 'flooring-booklet'),
  },
  wenge: {
    ...recalled([4.8, 8.1, 13], null),
    shrinkRadialPct: cited(4.8, 'memory', 'from-memory'),
    shrinkTangentialPct: cited(8.1, 'memory', 'from-memory'),
    shrinkVolumePct: cited(13, 'memory', 'from-memory'),
  },
};

function seen(shrink: Triple, perPct: Pair | null): Movement {
  return {
    shrinkRadialPct: cited(shrink[0], 'seen', 'handbook-shrinkage-page'),
    shrinkTangentialPct: cited(shrink[1], 'seen', 'handbook-shrinkage-page'),
    shrinkVolumePct: cited(shrink[2], 'seen', 'handbook-shrinkage-page'),
    ...coefficients(perPct),
  };
}

function recalled(shrink: Triple, perPct: Pair | null): Movement {
  return {
    shrinkRadialPct: cited(shrink[0], 'memory', 'wood-handbook-2010'),
    shrinkTangentialPct: cited(shrink[1], 'memory', 'wood-handbook-2010'),
    shrinkVolumePct: cited(shrink[2], 'memory', 'wood-handbook-2010'),
    ...coefficients(perPct),
  };
}

function coefficients(perPct: Pair | null): Pick<Movement, 'radialPerPct' | 'tangentialPerPct'> {
  return {
    radialPerPct: perPct && cited(perPct[0], 'seen', 'handbook-movement-table'),
    tangentialPerPct: perPct && cited(perPct[1], 'seen', 'handbook-movement-table'),
  };
}
