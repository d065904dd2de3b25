import { type Cited, cited } from './cited.ts';
import type { SourceId } from './sources.ts';
import type { WoodId } from './wood.ts';

/** Hardness and specific gravity of a wood; `null` where no value was found. */
export interface Strength {
  /** Janka side hardness of green wood in pounds-force (an 11.28 mm ball pressed in to half its diameter). */
  readonly jankaGreenLbf: Cited | null;
  /** Janka side hardness at 12 % moisture in pounds-force. */
  readonly janka12Lbf: Cited | null;
  /** Oven-dry mass over green volume, relative to water. */
  readonly gravityGreen: Cited | null;
  /** Oven-dry mass over volume at 12 % moisture, relative to water. */
  readonly gravity12: Cited | null;
}

const handbook: SourceId = 'wood-handbook-2010';

/** Strength by wood: FPL-GTR-190 tables 5-3b and 5-5b, or the page through which a row was read. */
export const woodStrengths: Readonly<Record<WoodId, Strength>> = {
  poplar: {
    jankaGreenLbf: cited(440, 'seen', 'fpl-poplar-sheet'),
    janka12Lbf: cited(540, 'seen', 'fpl-poplar-sheet'),
    gravityGreen: cited(0.4, 'seen', 'fpl-poplar-sheet'),
    gravity12: cited(0.42, 'seen', 'fpl-poplar-sheet'),
  },
  cherry: {
    jankaGreenLbf: cited(660, 'memory', handbook),
    janka12Lbf: cited(950, 'seen', 'cherry-trade-page'),
    gravityGreen: cited(0.47, 'memory', handbook),
    gravity12: cited(0.5, 'memory', handbook),
  },
  maple: {
    jankaGreenLbf: cited(970, 'seen', 'hard-maple-trade-page'),
    janka12Lbf: cited(1450, 'seen', 'hard-maple-trade-page'),
    gravityGreen: cited(0.56, 'seen', 'hard-maple-trade-page'),
    gravity12: cited(0.63, 'seen', 'hard-maple-trade-page'),
  },
  walnut: {
    jankaGreenLbf: cited(900, 'seen', 'fpl-walnut-sheet'),
    janka12Lbf: cited(1010, 'seen', 'fpl-walnut-sheet'),
    gravityGreen: cited(0.51, 'seen', 'fpl-walnut-sheet'),
    gravity12: cited(0.55, 'seen', 'fpl-walnut-sheet'),
  },
  'red-maple': fromHandbook(700, 950, 0.49, 0.54),
  'white-oak': {
    ...fromHandbook(1060, 1360, 0.6, 0.68),
    janka12Lbf: cited(1360, 'seen', 'white-oak-trade-page'),
  },
  'red-oak': fromHandbook(1000, 1290, 0.56, 0.63),
  ash: fromHandbook(960, 1320, 0.55, 0.6),
  'shagbark-hickory': fromHandbook(1460, 1880, 0.64, 0.72),
  'pecan-hickory': fromHandbook(1310, 1820, 0.6, 0.66),
  beech: fromHandbook(850, 1300, 0.56, 0.64),
  'yellow-birch': fromHandbook(780, 1260, 0.55, 0.62),
  basswood: fromHandbook(250, 410, 0.32, 0.37),
  alder: fromHandbook(440, 590, 0.37, 0.41),
  mahogany: fromHandbook(740, 800, 0.45, null),
  teak: {
    jankaGreenLbf: cited(930, 'seen', 'handbook-teak-row'),
    janka12Lbf: cited(1000, 'seen', 'handbook-teak-row'),
    gravityGreen: cited(0.55, 'seen', 'handbook-teak-row'),
    gravity12: null,
  },
  purpleheart: {
    ...fromHandbook(1810, 1860, 0.67, null),
    janka12Lbf: cited(1860, 'seen', 'flooring-booklet'),
  },
  padauk: {
    jankaGreenLbf: null,
    janka12Lbf: cited(1725, 'seen', 'flooring-booklet'),
    gravityGreen: null,
    gravity12: cited(0.68, 'seen', 'flooring-booklet'),
  },
  wenge: {
    jankaGreenLbf: null,
    // trade figures run from 1630 to 1930: their middle
    janka12Lbf: cited(1780, 'memory', 'from-memory'),
    gravityGreen: cited(0.72, 'memory', 'from-memory'),
    gravity12: null,
  },
};

function fromHandbook(green: number, dry: number, gravityGreen: number, gravity12: number | null): Strength {
  return {
    jankaGreenLbf: cited(green, 'memory', handbook),
    janka12Lbf: cited(dry, 'memory', handbook),
    gravityGreen: cited(gravityGreen, 'memory', handbook),
    gravity12: gravity12 === null ? null : cited(gravity12, 'memory', handbook),
  };
}
