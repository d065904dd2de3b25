import type { LengthUnit } from '@pourproof/plane';
import { choice } from './holds.ts';
import type { Rows } from './setting.ts';

/** In what the answer is given. */
export interface AnswerSettings {
  readonly units: LengthUnit;
}

/** Settings of the answer. */
export const ANSWER_SETTINGS = {
  units: {
    isOfShop: true,
    holds: choice(['mm', 'in'] as const),
    field: 'units',
    usual: { value: 'mm', status: 'practice', because: ['common-practice'] },
    group: 'output',
    takes: 'mm|in',
    help: 'Unit of the answer; else the unit that you typed',
  },
} as const satisfies Rows<AnswerSettings>;
