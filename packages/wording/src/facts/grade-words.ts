import type { PicturedGradeId } from '@pourproof/proof';

/** What each grade of a stroke or an area means, the gravest first. */
export const GRADE_WORDS: Readonly<Record<PicturedGradeId, string>> = {
  lost: 'no colour is left',
  spoilt: 'too narrow or too shallow after levelling',
  close: 'at risk if twice as much comes off',
  holds: 'safe',
  uncut: 'never cut, for no bit enters',
};
