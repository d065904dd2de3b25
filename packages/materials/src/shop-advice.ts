import { type Cited, cited } from './cited.ts';

/** Id of a piece of shop advice. */
export type ShopAdviceId = 'bleed-stays';

/** Advice that belongs to a step of the work, with its sources. */
export const shopAdvice: Readonly<Record<ShopAdviceId, Cited<string>>> = {
  'bleed-stays': cited(
    'Levelling will not remove bleed: at an end-grain wall the pores are open from face to floor. At the sloping wall of a V it only thins it.',
    'inference',
    'own-inference',
  ),
};
