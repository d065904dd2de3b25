import type { Report } from '@pourproof/proof';

type Notice = Report['artwork']['notices'][number];

/** What is missing is the worst: nobody sees it in the picture. */
const ORDER: readonly NonNullable<Notice['effect']>[] = ['left-out', 'changed', 'assumed'];

/**
 * What a maker must know together with the verdict, since it holds for the artwork as read: what of the drawing was left out, what was
 * read otherwise than drawn, and what was guessed; the gravest first.
 */
export function notAsDrawnNotices({ artwork }: Pick<Report, 'artwork'>): readonly Notice[] {
  return ORDER.flatMap((effect) => artwork.notices.filter((notice) => notice.effect === effect));
}

/** The same in sentences of the reader. */
export function notAsDrawn(report: Pick<Report, 'artwork'>): readonly string[] {
  return notAsDrawnNotices(report).map(({ text }) => text);
}
