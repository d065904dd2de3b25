import type { Notice, NoticePlace } from '@pourproof/plane';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';

/** Notices of readers that mean an outline was not closed as drawn. */
const OPEN_CODES: ReadonlySet<string> = new Set(['open-outline', 'open-chain']);

/** Outlines that the file leaves open: what is inside them is a guess until they are closed. */
export const outlineOpen: Check = {
  code: 'outline-open',
  run: ({ drawing }) => {
    const places = drawing.notices.filter(isOpen).flatMap((notice) => notice.where);
    if (places.length === 0) {
      return null;
    }
    const gap = places.reduce((most, place) => Math.max(most, place.gapMm ?? 0), 0);
    return {
      code: 'outline-open',
      severity: 'caution',
      where: places.filter(hasPoint).map((place) =>
        placeOfPoint(place.atMm, {
          what: 'gap',
          ...(place.gapMm === undefined ? {} : { lengthMm: place.gapMm }),
        }),
      ),
      measured: { value: gap, quantity: 'length', unit: 'mm' },
      limit: { value: 0, quantity: 'length', unit: 'mm' },
      because: ['svg2-fill'],
      fix: { options: [{ do: 'close-gap', gapMm: gap, clears: true }] },
    };
  },
};

function isOpen(notice: Notice): boolean {
  return OPEN_CODES.has(notice.code);
}

function hasPoint(place: NoticePlace): place is NoticePlace & { atMm: NonNullable<NoticePlace['atMm']> } {
  return place.atMm !== undefined;
}
