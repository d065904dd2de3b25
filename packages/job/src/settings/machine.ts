import { measure, number } from './holds.ts';
import type { Rows } from './setting.ts';

/**
 * Speeds and acceleration of a machine that the maker gave; the others have defaults of common practice where
 * they are used.
 */
export interface MachineSettings {
  readonly feedMmPerMin?: number;
  readonly plungeMmPerMin?: number;
  readonly rapidMmPerMin?: number;
  readonly accelerationMmPerS2?: number;
}

/** How the bits are driven; `null` where the maker did not say. */
export interface PassSettings {
  /** Most depth in one pass, mm. */
  readonly passDepthMm: number | null;
  /** Distance between rounds of a clearing path, percent of the tip's diameter. */
  readonly stepoverPct: number | null;
}

const USUAL_MACHINE = 'a usual machine';

/** Speeds of any router, mm/min: what lies beyond is a slip of the unit (our choice). */
const FEED = { min: 1, max: 100_000 };

/** Settings of the machine. */
export const MACHINE_SETTINGS = {
  feed: {
    isOfShop: true,
    holds: measure('speed', '1000mm/min', FEED),
    field: 'feedMmPerMin',
    otherwise: USUAL_MACHINE,
    group: 'machine',
    takes: 'SPEED',
    help: 'Speed in the wood, such as 40in/min',
    label: 'Speed in the wood',
    hint: 'As in 1000mm/min or 40in/min; the measures say what is taken where nothing is typed',
  },
  plunge: {
    isOfShop: true,
    holds: measure('speed', '300mm/min', FEED),
    field: 'plungeMmPerMin',
    otherwise: USUAL_MACHINE,
    group: 'machine',
    takes: 'SPEED',
    help: 'Speed straight down',
    label: 'Speed straight down',
  },
  rapid: {
    isOfShop: true,
    holds: measure('speed', '2500mm/min', FEED),
    field: 'rapidMmPerMin',
    otherwise: USUAL_MACHINE,
    group: 'machine',
    takes: 'SPEED',
    help: 'Speed above the wood',
    label: 'Speed above the wood',
  },
  accelerationMmPerS2: {
    isOfShop: true,
    holds: number('a number of mm/s²', 200, { min: 1, max: 100_000 }),
    field: 'accelerationMmPerS2',
    otherwise: USUAL_MACHINE,
    group: 'machine',
    flag: 'acceleration',
    takes: 'MM/S2',
    help: 'How fast the machine speeds up, in mm/s²',
    label: 'Acceleration, mm/s²',
  },
} as const satisfies Rows<MachineSettings>;

/** Settings of the passes. */
export const PASS_SETTINGS = {
  passDepth: {
    isOfShop: true,
    holds: measure('length', '1.5mm', { min: 0.01, max: 1000 }),
    field: 'passDepthMm',
    otherwise: 'half the bit',
    group: 'machine',
    takes: 'LENGTH',
    help: 'Most depth in one pass; default half the bit',
    label: 'Most depth of one pass',
  },
  stepoverPct: {
    isOfShop: true,
    holds: number('a number of percent', 40, { percent: 'itself', min: 1, max: 50 }),
    field: 'stepoverPct',
    otherwise: 'a usual one',
    group: 'machine',
    takes: 'PERCENT',
    help: 'Distance between rounds, in percent of the tip',
    label: 'Between rounds, percent of the bit',
  },
} as const satisfies Rows<PassSettings>;
