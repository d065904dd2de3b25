import { defaultMaterials } from '@pourproof/materials';
import { material, measure, number } from './holds.ts';
import type { Rows } from './setting.ts';

/** How much resin is mixed and how it is weighed. */
export interface PourSettings {
  readonly overpourMm: number;
  readonly wastePct: number;
  readonly boards: number;
  /** Id of the scale's row in `materials`. */
  readonly weigh: string;
  readonly pricePerG: number | null;
}

/** Settings of the pour. */
export const POUR_SETTINGS = {
  overpour: {
    isOfShop: true,
    holds: measure('length', '0.5mm', { min: 0, max: 50 }),
    field: 'overpourMm',
    usual: { limit: 'overpour', as: (mm: number): string => `${mm}mm` },
    group: 'resin',
    takes: 'LENGTH',
    help: 'How proud of the face the resin is poured',
    label: 'Poured proud of the face by',
  },
  wastePct: {
    isOfShop: true,
    holds: number('a number of percent', 15, { percent: 'itself', min: 0, max: 100 }),
    field: 'wastePct',
    usual: { limit: 'waste', as: (percent: number): number => percent },
    group: 'resin',
    takes: 'PERCENT',
    help: 'Resin that stays in the cup, in percent',
    label: 'Stays in the cup, percent',
  },
  boards: {
    holds: number('a whole number', 4, { min: 1, max: 1000, isWhole: true }),
    field: 'boards',
    usual: { value: 1, status: 'practice', because: ['common-practice'] },
    group: 'resin',
    takes: 'COUNT',
    help: 'Equal boards that are poured together',
    label: 'Equal boards poured together',
  },
  weigh: {
    isOfShop: true,
    holds: material('scales'),
    field: 'weigh',
    usual: { value: 'tenth', status: 'practice', because: ['common-practice'] },
    group: 'resin',
    takes: 'NAME',
    help: `Scale that the parts are weighed on: ${Object.keys(defaultMaterials.scales).join(', ')}, or one of yours`,
    label: 'Scale',
  },
  pricePerG: {
    isOfShop: true,
    holds: number('a number', 0.03, { min: 0, max: 1_000_000 }),
    field: 'pricePerG',
    otherwise: 'no price is answered',
    group: 'resin',
    takes: 'PRICE',
    help: 'Price of a gram of mixed resin, in your money',
    label: 'Price of a gram of mix',
  },
} as const satisfies Rows<PourSettings>;
