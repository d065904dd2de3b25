import { type Origin, origin } from './cited.ts';

/** Id of a caution that every sheet prints. */
export type CautionId = 'rules' | 'dust' | 'sensitisers' | 'solvents' | 'exotherm' | 'food';

/** What each caution rests on; its words stand in `@pourproof/wording`. */
export const cautions: Readonly<Record<CautionId, Origin>> = {
  rules: origin('practice', 'common-practice'),
  dust: origin('seen', 'osha-wood-dust'),
  sensitisers: origin('seen', 'hse-rr79', 'oshwiki-epoxy'),
  solvents: origin('seen', 'flash-point-tables'),
  exotherm: origin('seen', 'resin-chemistry-page'),
  food: origin('seen', 'cfr-21-175-300'),
};
