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
};
