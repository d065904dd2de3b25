import type { Status } from './cited.ts';
import type { SourceId } from './sources.ts';
import type { WoodId } from './wood.ts';

/** Arrangement of pores over a growth ring (IAWA features 3, 4 and 5); softwoods have none. */
export type Porosity = 'ring' | 'semi-ring' | 'diffuse' | 'none';

/** Pores of a wood: what lets resin in and what stops it. */
export interface Pores {
  readonly porosity: Porosity;
  /**
   * Tangential diameter of the larger (earlywood) vessels in µm, smallest and largest usual; from memory, ±30
   * %.
   */
  readonly diameterUm: readonly [low: number, high: number] | null;
  /** Vessels are longer than most boards and few of them are plugged, so that no air is trapped in them. */
  readonly runsThrough: boolean;
  /** What blocks the vessels, in words. */
  readonly blocking: string;
  /** The wood's own colour runs into finishes and pale neighbours. */
  readonly ownColourRuns: boolean;
  /** Oily by nature: wipe before resin. */
  readonly oily: boolean;
  /** Status of the porosity class; the diameters are always from memory. */
  readonly status: Status;
  readonly because: readonly SourceId[];
}

const diameters: readonly SourceId[] = ['iawa-1989', 'panshin-dezeeuw', 'hoadley-1990'];

/** Pores by wood. */
export const woodPores: Readonly<Record<WoodId, Pores>> = {
  poplar: pores('diffuse', [50, 100], 'open; wide white sapwood is common stock', ['forestry-course']),
  cherry: pores('diffuse', [40, 90], 'some gum in the heartwood; diffuse to weakly semi-ring porous'),
  maple: pores('diffuse', [40, 90], 'open; stock is mostly sapwood', ['hard-maple-trade-page']),
  walnut: pores('semi-ring', [130, 190], 'tyloses and deposits'),
  'red-maple': pores('diffuse', [40, 90], 'open; stock is mostly sapwood'),
  'white-oak': pores('ring', [180, 380], 'abundant tyloses', ['tyloses-trade-page']),
  'red-oak': runsThrough(pores('ring', [200, 420], 'few tyloses: an open straw')),
  ash: runsThrough(pores('ring', [120, 350], 'some tyloses')),
  'shagbark-hickory': hickory('ring'),
  'pecan-hickory': hickory('semi-ring'),
  beech: pores('diffuse', [50, 100], 'open; red heart has tyloses'),
  'yellow-birch': pores('diffuse', [60, 160], 'open; in a birch a fifth of the vessels ended within 20 mm', [
    'birch-conductivity',
  ]),
  basswood: remembered('no note found', null),
  alder: remembered('no note found', null),
  mahogany: {
    ...pores('diffuse', [120, 200], 'some gum'),
    because: ['mahogany-table', ...diameters],
  },
  teak: {
    ...pores('ring', [150, 340], 'tyloses and deposits'),
    oily: true,
    because: ['teak-trade-page', ...diameters],
  },
  purpleheart: colourRuns(remembered('deposits; its colour runs into finishes', [100, 250])),
  padauk: colourRuns(remembered('deposits; its colour runs into finishes', [100, 250])),
  wenge: remembered('deposits', [100, 250]),
  'white-pine': softwood(
    'softwood with large resin canals; its pits close on drying; resin in the heartwood',
  ),
  spruce: softwood('softwood with small resin canals; its pits close on drying'),
  redcedar: softwood('softwood without resin canals; its pits close on drying'),
};

function pores(
  porosity: Porosity,
  diameterUm: readonly [number, number] | null,
  blocking: string,
  more: readonly SourceId[] = [],
): Pores {
  return {
    porosity,
    diameterUm,
    runsThrough: false,
    blocking,
    ownColourRuns: false,
    oily: false,
    status: 'seen',
    because: ['alden-charcoal-id', ...more, ...(diameterUm ? diameters : [])],
  };
}

function hickory(porosity: Porosity): Pores {
  return {
    ...pores(porosity, [150, 300], 'tyloses; pits between vessels blocked'),
    because: ['thomas-hickory', ...diameters],
  };
}

function remembered(blocking: string, diameterUm: readonly [number, number] | null): Pores {
  return {
    ...pores('diffuse', diameterUm, blocking),
    status: 'memory',
    because: diameterUm ? diameters : ['from-memory'],
  };
}

function softwood(blocking: string): Pores {
  return { ...remembered(blocking, null), porosity: 'none' };
}

function runsThrough(row: Pores): Pores {
  return { ...row, runsThrough: true, because: [...row.because, 'zimmermann-jeje'] };
}

function colourRuns(row: Pores): Pores {
  return { ...row, ownColourRuns: true, because: ['flooring-booklet', ...row.because] };
}
