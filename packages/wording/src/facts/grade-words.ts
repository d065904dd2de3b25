import type { LevellingGrade } from '@pourproof/proof';

/** What each grade of a stroke means, the gravest first. */
export const GRADE_WORDS: Readonly<Record<LevellingGrade, string>> = {
  lost: 'all colour is lost',
  spoilt: 'too narrow or too shallow after levelling',
  close: 'at risk if twice as much comes off',
  holds: 'safe',
};
