import type { Notice, NoticePlace } from '@pourproof/plane';
import { formatLength } from '@pourproof/plane';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';

/** Notices of readers that mean an outline was not closed as drawn. */
const OPEN_CODES: ReadonlySet<string> = new Set(['open-outline', 'open-chain']);

/** Outlines that the file leaves open: what is inside them is a guess until they are closed. */
export const outlineOpen: Check = {
  code: 'outline-open',
  title: 'An outline is open',
  run: ({ drawing }) => {
    const places = drawing.notices.filter(isOpen).flatMap((notice) => notice.where);
    if (places.length === 0) {
      return null;
    }
    const gap = places.reduce((most, place) => Math.max(most, place.gapMm ?? 0), 0);
    return {
      code: 'outline-open',
      severity: 'caution',
      where: places.filter(hasPoint).map((place) => placeOfPoint(place.atMm)),
      measured: { value: gap, unit: 'mm' },
      limit: { value: 0, unit: 'mm' },
      because: ['svg2-fill'],
      fix: { options: [{ do: 'close-gap', value: gap, unit: 'mm', clears: true }] },
    };
  },
  advise: (finding, unit) => ({
    headline: `${finding.where.length <= 1 ? 'One outline is' : `${finding.where.length} outlines are`} open by up to ${formatLength(finding.measured.value, unit)}.`,
    why: 'A pocket needs a closed outline. Where it is open, what will be cut is a guess: the ends are joined by a straight line or the outline is left out, as the notice says.',
    fixes: [
      `Join the ends in the drawing (the widest gap is ${formatLength(finding.measured.value, unit)}) and vet it again.`,
    ],
  }),
};

function isOpen(notice: Notice): boolean {
  return OPEN_CODES.has(notice.code);
}

function hasPoint(place: NoticePlace): place is NoticePlace & { atMm: NonNullable<NoticePlace['atMm']> } {
  return place.atMm !== undefined;
}
