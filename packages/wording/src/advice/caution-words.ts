import type { CautionId } from '@pourproof/materials';

/**
 * Short safety texts, in the order in which they are printed. Advice only; no licensed trade is replaced. What
 * each rests on stands in `cautions` of `@pourproof/materials`.
 */
export const CAUTION_WORDS: Readonly<Record<CautionId, string>> = {
  rules: 'Data sheets, local codes and the machine’s manual come first; this sheet is advice only.',
  dust: 'Wood dust harms lungs and some of it causes cancer: extract at the cutter and wear a fitted dust mask when sanding. Usual limits run from 1 to 5 mg/m³.',
  sensitisers:
    'Uncured epoxy and its hardener cause lasting skin and airway allergy, and so does dust of half-cured resin: gloves, sleeves, fresh air, and no sanding before it is hard.',
  solvents:
    'Acetone (flash point −19 °C) and alcohol (12 °C) make vapour that burns at room temperature: no torch, heat gun or spark near them. Lay oily rags out flat to dry.',
  exotherm:
    'Mixed resin heats itself: a full cup or a deep pour can smoke, foam and crack. Mix small batches, pour at once, keep to the depth on the label.',
  food: 'Nothing here says that a finish may touch food: that depends on the maker of the resin, on its use and on full cure. Keep filled areas away from food unless the data sheet certifies it.',
};
