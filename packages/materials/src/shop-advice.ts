import { type Origin, origin } from './cited.ts';

/** What each piece of advice on a step of the work rests on; its words stand in `@pourproof/wording`. */
export const shopAdvice: Readonly<Record<'bleed-stays', Origin>> = {
  'bleed-stays': origin('inference', 'own-inference'),
};
