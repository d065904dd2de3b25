import { type Cited, cited } from './cited.ts';

/** Id of a caution that every sheet prints. */
export type CautionId = 'rules' | 'dust' | 'sensitisers' | 'solvents' | 'exotherm' | 'food';

/**
 * Short safety texts with their sources, in the order in which they are printed. Advice only; no licensed
 * trade is replaced.
 */
export const cautions: Readonly<Record<CautionId, Cited<string>>> = {
  rules: cited(
    'Data sheets, local codes and the machine’s manual come first; this sheet is advice only.',
    'practice',
    'common-practice',
  ),
  dust: cited(
    'Wood dust harms lungs and some of it causes cancer: extract at the cutter and wear a fitted dust mask when sanding. Usual limits run from 1 to 5 mg/m³.',
    'seen',
    'osha-wood-dust',
  ),
  sensitisers: cited(
    'Uncured epoxy and its hardener cause lasting skin and airway allergy, and so does dust of half-cured resin: gloves, sleeves, fresh air, and no sanding before it is hard.',
    'seen',
    'hse-rr79',
    'oshwiki-epoxy',
  ),
  solvents: cited(
    'Acetone (flash point −19 °C) and alcohol (12 °C) make vapour that burns at room temperature: no torch, heat gun or spark near them. Lay oily rags out flat to dry.',
    'seen',
    'flash-point-tables',
  ),
  exotherm: cited(
    'Mixed resin heats itself: a full cup or a deep pour can smoke, foam and crack. Mix small batches, pour at once, keep to the depth on the label.',
    'seen',
    'resin-chemistry-page',
  ),
  food: cited(
    'Nothing here says that a finish may touch food: that depends on the maker of the resin, on its use and on full cure. Keep filled areas away from food unless the data sheet certifies it.',
    'seen',
    'cfr-21-175-300',
  ),
};

/** Steps for a board that was oiled or waxed: such a board is a stop, never a score. */
export const oilCleaning: Cited<readonly string[]> = cited(
  [
    'Plane or sand to bare wood; sanding alone leaves oil in the pores.',
    'Wash with a solvent that the data sheet allows, wipe dry with a clean white cloth, and repeat until the cloth stays clean.',
    'Let all solvent leave, away from sparks and heat.',
    'Test the bond on a scrap of the same board before the job.',
  ],
  'seen',
  'oil-and-epoxy-page',
  'common-practice',
);
