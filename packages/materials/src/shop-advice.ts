import { type Cited, cited } from './cited.ts';

/** Id of a piece of shop advice. */
export type ShopAdviceId = 'outgassing' | 'blush' | 'seal-all' | 'spray-seal' | 'bleed-stays' | 'flakes';

/** Advice that belongs to a step of the work, with its sources. */
export const shopAdvice: Readonly<Record<ShopAdviceId, Cited<string>>> = {
  outgassing: cited(
    'Seal and pour while the wood cools: wood that warms breathes bubbles into the resin. A thin seal first holds them back.',
    'seen',
    'outgassing-page',
  ),
  blush: cited(
    'Once epoxy is hard, wash the blush off with water and abrade with 80 to 220 grit before the next coat; while it is tacky neither is needed.',
    'seen',
    'recoat-pages',
  ),
  'seal-all': cited(
    'Seal the face around the cut as well: overpour stains bare wood.',
    'inference',
    'own-inference',
  ),
  'spray-seal': cited(
    'A sprayed seal in the recess and wax on the face keep colour out and ease the release.',
    'seen',
    'inlay-technique',
  ),
  'bleed-stays': cited(
    'Levelling will not remove bleed: at an end-grain wall the pores are open from face to floor. At the sloping wall of a V it only thins it.',
    'inference',
    'own-inference',
  ),
  flakes: cited(
    'Dyes and inks travel with the resin; flakes of 10 to 60 µm stop at the pore mouths, so that a streak of flake colour may be faint.',
    'inference',
    'own-inference',
  ),
};
