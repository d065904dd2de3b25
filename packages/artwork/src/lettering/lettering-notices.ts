import type { Notice, NoticePlace } from '@pourproof/plane';
import { caution, leftOut, makeNotice, type NoticeKind, note } from '../notice-kind.ts';

/** Parameters of every notice that lettering can give; each is explained in docs/lettering.md. */
export interface LetteringNoticeParams {
  /** Ratio of the height of the H's outline to the cap height that the font states. */
  'lettering-cap-height': { readonly ratio: number };
  'lettering-first-face': { readonly faces: number };
  'lettering-invisible': Count;
  'lettering-joins-apart': Count;
  'lettering-loose-mark': Count;
  'lettering-no-shaping': { readonly scripts: readonly string[] };
  'lettering-tab': Readonly<Record<string, never>>;
}

type Count = { readonly count: number };

/** A notice of lettering. */
export function letteringNotice<C extends keyof LetteringNoticeParams & string>(
  code: C,
  params: LetteringNoticeParams[C],
  where: readonly NoticePlace[] = [],
): Notice {
  return makeNotice(code, KINDS[code], params, where);
}

const KINDS: { readonly [C in keyof LetteringNoticeParams]: NoticeKind<LetteringNoticeParams[C]> } = {
  'lettering-cap-height': note(
    ({ ratio }) =>
      `The font's H is ${ratio.toFixed(3)} times as tall as the cap height that the font states, which was used. For an H of exactly the height you want, divide that height by ${ratio.toFixed(3)}.`,
  ),
  'lettering-first-face': note(({ faces }) => `The font file holds ${faces} faces; the first was used.`),
  'lettering-invisible': leftOut(
    () => 'The font draws nothing for these characters. If they should show, choose another font.',
  ),
  'lettering-joins-apart': caution(
    () =>
      'In this font these letters join the letter to their right, but here they stand apart. Use less tracking or a wider arc.',
  ),
  'lettering-loose-mark': caution(
    () =>
      'The font does not say where these marks sit on their letters. Check how they look, or choose another font.',
  ),
  'lettering-no-shaping': caution(
    () =>
      'The font has no rules for joining or ordering the letters of this script, so the text will read wrongly. Choose another font.',
  ),
  'lettering-tab': note(() => 'Each tab in the text was read as four spaces.'),
};
