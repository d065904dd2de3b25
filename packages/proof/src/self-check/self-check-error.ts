import { InternalError } from '@pourproof/plane';
import type { BalanceId, BalanceUnit, Miss } from './balance.ts';

/** Digits of figures in the message; the misses have all of them. */
const DIGITS = 6;

/** A proof that does not balance: our fault, and none of its figures is told. */
export class SelfCheckError extends InternalError {
  /** What does not balance, and by how much. */
  readonly misses: readonly Miss[];
  /** Seed of the places at which widths were measured again. */
  readonly seed: number;

  constructor(misses: readonly Miss[], seed: number) {
    super(misses.map(missText).join('; '));
    this.name = 'SelfCheckError';
    this.misses = misses;
    this.seed = seed;
  }
}

function missText({ id, unit, got, least, most, index }: Miss): string {
  const [from, to] = [least, most].map((each) => Number(each.toPrecision(DIGITS)));
  const range = from === to ? `${from}` : `${from} to ${to}`;
  const place = index === undefined ? '' : ` (no. ${index + 1})`;
  return `${RULES[id]}${place}, but it is ${Number(got.toPrecision(DIGITS))} where ${range} ${SYMBOLS[unit]} is due`;
}

const SYMBOLS: Readonly<Record<BalanceUnit, string>> = { mm: 'mm', mm2: 'mm²', mm3: 'mm³', ml: 'ml', g: 'g' };

const RULES: Readonly<Record<BalanceId, string>> = {
  'artwork-is-cut-and-left': 'what is cut and what is left make up the artwork',
  'cut-is-its-outline': 'the cut has the area of its outline',
  'bits-add-up-to-cut': 'what the bits take adds up to the cut',
  'colours-add-up-to-cut': 'the colours add up to the cut',
  'blocks-lie-in-cut': 'the parts of the cut in each block are no more than the cut',
  'rounds-lie-in-artwork': 'no round cuts more than the artwork',
  'volume-lies-between-slices': 'the volume lies between the prisms under and on its slices',
  'depth-is-within-limit': 'the cut is no deeper than its limit',
  'floor-lies-in-cut': 'the floor is no larger than the cut',
  'fills-add-up-to-volume': 'the fills of all colours add up to the volume less seal',
  'fill-fits-its-colour': 'the fill of a colour is what its area holds at its depth',
  'mix-is-its-fill': 'the mix is the fill and its waste',
  'grams-are-volume-by-density': 'the grams take up the volume of the mix',
  'parts-keep-the-ratio': 'the parts of the mix keep its ratio',
  'cups-add-up-to-mix': 'the cups add up to the mix',
  'width-is-distance-to-outline': 'the width of a stroke is twice its distance from the outline',
  'width-lies-in-artwork': 'the middle of a stroke lies in the artwork',
};
