import { type Cited, cited } from './cited.ts';
import type { Lab } from './colour-difference.ts';

/** Id of a resin colour that ships with pourproof. */
export type ResinColourId = 'black' | 'blue' | 'white' | 'red';

/** CIE L*a*b* of opaque pigmented resin: plain examples; a measured colour replaces them. */
export const resinColours: Readonly<Record<ResinColourId, Cited<Lab>>> = {
  black: cited<Lab>([15, 0, 0], 'memory', 'from-memory'),
  blue: cited<Lab>([30, 15, -45], 'memory', 'from-memory'),
  white: cited<Lab>([95, 0, 2], 'memory', 'from-memory'),
  red: cited<Lab>([40, 55, 30], 'memory', 'from-memory'),
};
