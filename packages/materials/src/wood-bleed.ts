import { type Cited, cited } from './cited.ts';
import type { WoodId } from './wood.ts';

/**
 * Median streak length in mm in unsealed wood for coating resin at 25 °C, wall across the grain, 1/8 in deep.
 * Set by us so that the seal factors reproduce common practice; no measured lengths were found, and no
 * published number gives this order.
 */
export const bleedPriors: Readonly<Record<WoodId, Cited | null>> = {
  poplar: cited(6, 'prior', 'own-prior', 'common-practice'),
  cherry: cited(3, 'prior', 'own-prior', 'common-practice'),
  maple: cited(2, 'prior', 'own-prior', 'common-practice'),
  walnut: cited(1, 'prior', 'own-prior', 'common-practice'),
  'red-maple': null,
  'white-oak': null,
  'red-oak': null,
  ash: null,
  'shagbark-hickory': null,
  'pecan-hickory': null,
  beech: null,
  'yellow-birch': null,
  basswood: null,
  alder: null,
  mahogany: null,
  teak: null,
  purpleheart: null,
  padauk: null,
  wenge: null,
  'white-pine': null,
  spruce: null,
  redcedar: null,
};

/** What is expected of a wood without a prior of its own, by its likeness to others. */
export interface BleedAnalogy {
  /** Median streak length in mm, as a prior is. */
  readonly medianMm: Cited;
  /** Spread of ln(travel) between its boards. */
  readonly boardSpread: Cited;
}

const analogy = (medianMm: number, boardSpread: number): BleedAnalogy => ({
  medianMm: cited(medianMm, 'inference', 'own-inference'),
  boardSpread: cited(boardSpread, 'inference', 'own-inference'),
});

/** Ring-porous with few tyloses: vessels longer than most boards, colour runs in lines. */
const OPEN_RING_POROUS = analogy(6, 1);
/** Softwood: no vessels, but cells of some millimetres whose pits close as the wood dries; colour shows as dots where there are resin canals. */
const CLOSED_TRACHEIDS = analogy(0.5, 0.9);
/** Large pores, but few, or plugged by tyloses and deposits: short, dark lines. */
const fewOrGummed = (medianMm: number): BleedAnalogy => analogy(medianMm, 0.7);
/** Diffuse-porous, many small open pores: haze. */
const openDiffusePorous = (medianMm: number): BleedAnalogy => analogy(medianMm, 0.8);

/**
 * Woods without a prior, by their vessels and tyloses: our inference from anatomy, never measured. White oak is ring-porous too, but its vessels
 * are full of tyloses. Softwoods have no vessels at all; pine lets colour
 * into its resin canals. Given for the stock that is usual: sapwood of maple, birch, basswood, alder and pine, heartwood of the others.
 */
export const bleedAnalogies: Readonly<Record<WoodId, BleedAnalogy | null>> = {
  poplar: null,
  cherry: null,
  maple: null,
  walnut: null,
  'red-maple': openDiffusePorous(3),
  'white-oak': analogy(0.7, 0.9),
  'red-oak': OPEN_RING_POROUS,
  ash: OPEN_RING_POROUS,
  'shagbark-hickory': fewOrGummed(1.5),
  'pecan-hickory': fewOrGummed(1.5),
  beech: openDiffusePorous(3),
  'yellow-birch': openDiffusePorous(3),
  basswood: openDiffusePorous(4),
  alder: openDiffusePorous(4),
  mahogany: fewOrGummed(2),
  teak: fewOrGummed(1),
  purpleheart: fewOrGummed(1.5),
  padauk: fewOrGummed(1),
  wenge: fewOrGummed(1),
  'white-pine': analogy(2, 0.7),
  spruce: CLOSED_TRACHEIDS,
  redcedar: CLOSED_TRACHEIDS,
};
