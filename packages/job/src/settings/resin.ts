import { type Colourant, limits, type ResinColourId, resinColours } from '@pourproof/materials';
import { choice, material, number } from './holds.ts';
import type { Rows } from './setting.ts';

/** The resin and its colour. */
export interface ResinSettings {
  /** Id of its row in `materials`. */
  readonly resin: string;
  /** `null` when the maker did not say. */
  readonly colour: ResinColourId | null;
  /** What colours the resin. */
  readonly colourant: Colourant;
  readonly pigmentPct: number;
}

const COLOURANTS: readonly Colourant[] = ['pigment', 'dye'];
const COLOURS = Object.keys(resinColours) as readonly ResinColourId[];

/** Settings of the resin and its colour. */
export const RESIN_SETTINGS = {
  resin: {
    isOfShop: true,
    holds: material('resins'),
    field: 'resin',
    usual: { value: 'coating', status: 'practice', because: ['common-practice'] },
    group: 'resin',
    takes: 'NAME',
    help: 'Class of resin (pourproof list resins)',
    label: 'Resin',
  },
  colour: {
    holds: choice(COLOURS),
    field: 'colour',
    otherwise: 'not said',
    group: 'resin',
    takes: 'NAME',
    help: `Colour of the resin, to tell whether a streak shows: ${COLOURS.join(', ')}`,
    label: 'Colour',
  },
  colourant: {
    isOfShop: true,
    holds: choice(COLOURANTS, { pigment: 'pigment: paste, powder or mica', dye: 'dye or ink' }),
    field: 'colourant',
    usual: { value: 'pigment', status: 'practice', because: ['common-practice'] },
    group: 'resin',
    takes: 'KIND',
    help: 'What colours it: pigment (paste, powder or mica), or a dye or ink, which tints and never hides the floor',
    label: 'Coloured with',
  },
  pigmentPct: {
    isOfShop: true,
    holds: number('a number of percent', 3, {
      percent: 'itself',
      min: 0,
      max: 20,
      why: 'More pigment would spoil the cure.',
    }),
    field: 'pigmentPct',
    usual: {
      follows: ({ colourant }): number => (colourant === 'dye' ? limits.dyeShare : limits.pigmentShare).value,
      from: `${limits.pigmentShare.value}; of a dye ${limits.dyeShare.value}`,
    },
    group: 'resin',
    takes: 'PERCENT',
    help: 'Pigment or dye by weight of the mix',
    label: 'Pigment or dye, percent of the mix',
  },
} as const satisfies Rows<ResinSettings>;
