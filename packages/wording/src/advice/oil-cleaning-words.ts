import type { OilCleaningStepId } from '@pourproof/materials';

/** What to do at each step of cleaning a board that was oiled or waxed. */
export const OIL_CLEANING_WORDS: Readonly<Record<OilCleaningStepId, string>> = {
  'bare-wood': 'Plane or sand to bare wood; sanding alone leaves oil in the pores.',
  'solvent-wash':
    'Wash with a solvent that the data sheet allows, wipe dry with a clean white cloth, and repeat until the cloth stays clean.',
  'solvent-leaves': 'Let all solvent leave, away from sparks and heat.',
  'bond-test': 'Test the bond on a scrap of the same board before the job.',
};
