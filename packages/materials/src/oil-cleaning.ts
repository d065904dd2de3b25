import { type Cited, cited } from './cited.ts';

/** Id of a step that cleans a board that was oiled or waxed. */
export type OilCleaningStepId = 'bare-wood' | 'solvent-wash' | 'solvent-leaves' | 'bond-test';

/**
 * Steps for a board that was oiled or waxed, in the order of work: such a board is a stop, never a score. Their
 * words stand in `@pourproof/wording`.
 */
export const oilCleaning: Cited<readonly OilCleaningStepId[]> = cited(
  ['bare-wood', 'solvent-wash', 'solvent-leaves', 'bond-test'],
  'seen',
  'oil-and-epoxy-page',
  'common-practice',
);
