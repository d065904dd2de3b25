import type { Cited } from './cited.ts';
import type { Lab } from './colour-difference.ts';
import { type BleedAnalogy, bleedAnalogies, bleedPriors } from './wood-bleed.ts';
import { woodColours } from './wood-colour.ts';
import { type Pores, woodPores } from './wood-pores.ts';

/** Id of a wood that ships with pourproof. */
export type WoodId =
  | 'poplar'
  | 'cherry'
  | 'maple'
  | 'walnut'
  | 'red-maple'
  | 'white-oak'
  | 'red-oak'
  | 'ash'
  | 'shagbark-hickory'
  | 'pecan-hickory'
  | 'beech'
  | 'yellow-birch'
  | 'basswood'
  | 'alder'
  | 'mahogany'
  | 'teak'
  | 'purpleheart'
  | 'padauk'
  | 'wenge'
  | 'white-pine'
  | 'spruce'
  | 'redcedar';

/** What is known of one wood. `null` means that no value could be found, not that it is zero. */
export interface Wood {
  /** Common English name. */
  readonly name: string;
  /** Botanical name; empty where the maker's own entry gives none. */
  readonly botanical: string;
  readonly pores: Pores;
  /** CIE L*a*b* of the dry, sanded face. */
  readonly lab: Cited<Lab> | null;
  /**
   * Median length in mm of a streak of coating resin along the grain of the unsealed wood: a prior, never a
   * measurement.
   */
  readonly bleedPriorMm: Cited | null;
  /** What stands for a prior where there is none, by likeness to other woods; `null` where nothing does. */
  readonly bleedAnalogy: BleedAnalogy | null;
  /**
   * Travel in heartwood and in sapwood as factors on that prior; `null` as they ship: no figure was found.
   */
  readonly heartFactor: Cited | null;
  readonly sapFactor: Cited | null;
}

/** Woods by id. */
export const woods: Readonly<Record<WoodId, Wood>> = {
  poplar: assemble('poplar', 'yellow-poplar', 'Liriodendron tulipifera'),
  cherry: assemble('cherry', 'black cherry', 'Prunus serotina'),
  maple: assemble('maple', 'hard maple', 'Acer saccharum'),
  walnut: assemble('walnut', 'black walnut', 'Juglans nigra'),
  'red-maple': assemble('red-maple', 'red maple', 'Acer rubrum'),
  'white-oak': assemble('white-oak', 'white oak', 'Quercus alba'),
  'red-oak': assemble('red-oak', 'northern red oak', 'Quercus rubra'),
  ash: assemble('ash', 'white ash', 'Fraxinus americana'),
  'shagbark-hickory': assemble('shagbark-hickory', 'shagbark hickory', 'Carya ovata'),
  'pecan-hickory': assemble('pecan-hickory', 'pecan hickory', 'Carya illinoinensis'),
  beech: assemble('beech', 'American beech', 'Fagus grandifolia'),
  'yellow-birch': assemble('yellow-birch', 'yellow birch', 'Betula alleghaniensis'),
  basswood: assemble('basswood', 'basswood', 'Tilia americana'),
  alder: assemble('alder', 'red alder', 'Alnus rubra'),
  mahogany: assemble('mahogany', 'mahogany', 'Swietenia macrophylla'),
  teak: assemble('teak', 'teak', 'Tectona grandis'),
  purpleheart: assemble('purpleheart', 'purpleheart', 'Peltogyne spp.'),
  padauk: assemble('padauk', 'African padauk', 'Pterocarpus soyauxii'),
  wenge: assemble('wenge', 'wenge', 'Millettia laurentii'),
  'white-pine': assemble('white-pine', 'eastern white pine', 'Pinus strobus'),
  spruce: assemble('spruce', 'spruce', 'Picea spp.'),
  redcedar: assemble('redcedar', 'western redcedar', 'Thuja plicata'),
};

function assemble(id: WoodId, name: string, botanical: string): Wood {
  return {
    name,
    botanical,
    pores: woodPores[id],
    lab: woodColours[id],
    bleedPriorMm: bleedPriors[id],
    bleedAnalogy: bleedAnalogies[id],
    heartFactor: null,
    sapFactor: null,
  };
}
