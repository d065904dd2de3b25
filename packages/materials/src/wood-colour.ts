import { type Cited, cited } from './cited.ts';
import type { Lab } from './colour-difference.ts';
import type { WoodId } from './wood.ts';

/**
 * CIE L*a*b* (D65) of the dry, sanded face. No published table could be read: all from memory, and a board
 * differs by ±4 to ±7 in lightness. A measured colour of the maker's own board replaces it. Cherry darkens
 * with years, walnut lightens.
 */
export const woodColours: Readonly<Record<WoodId, Cited<Lab> | null>> = {
  poplar: cited<Lab>([78, 1, 22], 'memory', 'from-memory'),
  cherry: cited<Lab>([64, 10, 22], 'memory', 'from-memory'),
  maple: cited<Lab>([81, 4, 19], 'memory', 'from-memory'),
  walnut: cited<Lab>([45, 7, 15], 'memory', 'from-memory'),
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
