import type { Report } from '@pourproof/proof';

/** Words for the verdict, without a full stop. */
export const VERDICT_WORDS: Readonly<Record<Report['verdict'], string>> = {
  clear: 'Nothing found that should keep you from cutting it',
  caution: 'It can be cut, but read the cautions first',
  stop: 'Do not cut it yet',
};
