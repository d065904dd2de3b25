import { material, measure, tick } from './holds.ts';
import type { Rows } from './setting.ts';

/** The wood where no board is described, and its fibres. */
export interface WoodSettings {
  readonly grainDeg: number;
  readonly diveDeg: number;
  /** Id of its row in `materials`. */
  readonly wood: string;
  /** Whether the board was ever oiled or waxed. */
  readonly isOiled: boolean;
}

/** Settings of the wood. */
export const WOOD_SETTINGS = {
  grain: {
    holds: measure('angle', '30deg'),
    field: 'grainDeg',
    usual: { value: '0deg', status: 'practice', because: ['common-practice'] },
    group: 'first',
    takes: 'ANGLE',
    help: 'Fibre direction on the face: 0deg runs left to right, turning counter-clockwise',
    only: { board: 'without' },
  },
  dive: {
    holds: measure('angle', '10deg', { min: 0, max: 90 }),
    field: 'diveDeg',
    usual: { value: '0deg', status: 'practice', because: ['common-practice'] },
    group: 'board',
    takes: 'ANGLE',
    help: 'How far the fibres rise out of the face, towards --grain; 90deg is an end-grain board',
    label: 'Fibres dive into the face by',
    hint: '90deg is an end-grain board',
    only: { board: 'without' },
  },
  wood: {
    isOfShop: true,
    holds: material('woods'),
    field: 'wood',
    usual: { value: 'maple', status: 'practice', because: ['common-practice'] },
    group: 'first',
    takes: 'NAME',
    help: 'Wood of the board (pourproof list woods)',
    label: 'Wood',
    only: { board: 'without' },
  },
  oiled: {
    holds: tick(),
    field: 'isOiled',
    usual: { value: false, status: 'practice', because: ['common-practice'] },
    group: 'seal',
    help: 'The board was oiled or waxed before',
    label: 'This board was oiled or waxed',
  },
} as const satisfies Rows<WoodSettings>;
