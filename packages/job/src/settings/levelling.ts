import { type LevelMethodId, levelMethods } from '@pourproof/materials';
import { choice, measure } from './holds.ts';
import type { Rows } from './setting.ts';

/** How the filled face is brought level. */
export interface LevellingSettings {
  readonly levelMm: number;
  readonly levelBy: LevelMethodId;
}

const METHODS = Object.keys(levelMethods) as readonly LevelMethodId[];
const NAMES = Object.fromEntries(METHODS.map((id) => [id, levelMethods[id].name]));
const USUAL_METHOD: LevelMethodId = 'hand';

/** Settings of levelling. */
export const LEVELLING_SETTINGS = {
  level: {
    isOfShop: true,
    holds: measure('length', '0.5mm', { min: 0, max: 50 }),
    field: 'levelMm',
    usual: {
      follows: ({ levelBy = USUAL_METHOD }): string =>
        `${levelMethods[levelBy as LevelMethodId].removalMm.value}mm`,
      from: 'what the way of levelling takes off',
    },
    group: 'levelling',
    takes: 'LENGTH',
    help: 'How much of the face levelling takes off',
    label: 'Takes off the face',
  },
  levelBy: {
    isOfShop: true,
    holds: choice(METHODS, NAMES),
    field: 'levelBy',
    usual: { value: USUAL_METHOD, status: 'practice', because: ['common-practice'] },
    group: 'levelling',
    takes: 'METHOD',
    help: `How the face is levelled: ${METHODS.join(', ')}`,
    label: 'Levelled by',
  },
} as const satisfies Rows<LevellingSettings>;
