import type { Report } from '@pourproof/proof';

type Effect = NonNullable<Report['artwork']['notices'][number]['effect']>;

/** What is missing is the worst: nobody sees it in the picture. */
const ORDER: readonly Effect[] = ['left-out', 'changed', 'assumed'];

/**
 * What a maker must know together with the verdict, since it holds for the artwork as read: what of the drawing was left out, what was
 * read otherwise than drawn, and what was guessed. Sentences of the reader; the gravest first.
 */
export function notAsDrawn({ artwork }: Pick<Report, 'artwork'>): readonly string[] {
  return ORDER.flatMap((effect) =>
    artwork.notices.filter((notice) => notice.effect === effect).map((notice) => notice.text),
  );
}
