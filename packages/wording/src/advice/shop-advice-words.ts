import type { shopAdvice } from '@pourproof/materials';

/** Advice that belongs to a step of the work. */
export const SHOP_ADVICE_WORDS: Readonly<Record<keyof typeof shopAdvice, string>> = {
  'bleed-stays':
    'Levelling will not remove bleed: at an end-grain wall the pores are open from face to floor. At the sloping wall of a V it only thins it.',
};
