import { material, measure, number } from './holds.ts';
import type { Rows } from './setting.ts';

/** The seal before the colour. */
export interface SealSettings {
  /** Id of its row in `materials`. */
  readonly seal: string;
  readonly coats: number;
  readonly sealHours: number;
}

/** Settings of the seal. */
export const SEAL_SETTINGS = {
  seal: {
    isOfShop: true,
    holds: material('sealers'),
    field: 'seal',
    usual: { value: 'none', status: 'practice', because: ['common-practice'] },
    group: 'first',
    takes: 'NAME',
    help: 'Seal coat before the colour (pourproof list seals)',
    label: 'Seal before the colour',
  },
  coats: {
    isOfShop: true,
    holds: number('a whole number', 2, { min: 0, max: 10, isWhole: true }),
    field: 'coats',
    usual: { value: 1, status: 'practice', because: ['common-practice'] },
    group: 'seal',
    takes: 'COUNT',
    help: 'Number of seal coats',
    label: 'Coats',
    only: { isSealed: true, about: 'the number of seal coats' },
  },
  sealHours: {
    isOfShop: true,
    holds: measure('time', '24h', { min: 0, max: 10_000 }),
    field: 'sealHours',
    usual: { limit: 'sealWait', as: (hours: number): string => `${hours}h` },
    group: 'seal',
    takes: 'TIME',
    help: 'Time from the last coat to the pour, such as 24h',
    label: 'Left before the pour',
    only: { isSealed: true, about: 'how long the seal is left' },
  },
} as const satisfies Rows<SealSettings>;
