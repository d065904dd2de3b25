import type { Report } from '@pourproof/proof';

/** A notice as the report tells it. */
export type ToldNotice = Report['artwork']['notices'][number];

/** What is missing is the worst: nobody sees it in the picture. A size that was guessed bears on every figure. */
const ORDER: readonly NonNullable<ToldNotice['effect']>[] = ['left-out', 'assumed', 'changed'];

/**
 * What a maker must know together with the verdict, since it holds for the artwork as read: what of the drawing was left out, what was
 * guessed, and what was read otherwise than drawn; the gravest first. What the maker has seen to is no news.
 */
export function notAsDrawn({ artwork }: Pick<Report, 'artwork'>): readonly ToldNotice[] {
  const open = artwork.notices.filter(({ seenTo }) => seenTo !== true);
  return ORDER.flatMap((effect) => open.filter((notice) => notice.effect === effect));
}

/** All other notices that the maker has not seen to. */
export function otherNotices({ artwork }: Pick<Report, 'artwork'>): readonly ToldNotice[] {
  return artwork.notices.filter(({ effect, seenTo }) => effect === undefined && seenTo !== true);
}

/** Cautions from reading that the maker has seen to. */
export function noticesSeenTo({ artwork }: Pick<Report, 'artwork'>): readonly ToldNotice[] {
  return artwork.notices.filter(({ seenTo }) => seenTo === true);
}
