import type { LevellingGrade } from '@pourproof/proof';

/** What each grade of a stroke means, the gravest first. */
export const GRADE_WORDS: Readonly<Record<LevellingGrade, string>> = {
  lost: 'all colour goes',
  spoilt: 'too narrow or too shallow after levelling',
  close: 'the same if twice as much comes off',
  holds: 'holds',
};
