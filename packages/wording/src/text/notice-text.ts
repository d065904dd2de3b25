import { formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';

type Notice = Report['artwork']['notices'][number];
type NoticePlace = Notice['where'][number];

/** A notice with its first place and its code: `Text was left out (text#name, line 7) [text-not-outlined]`. */
export function noticeText(notice: Notice, report: Report, unit: LengthUnit): string {
  const [first] = notice.where;
  const more = notice.where.length - 1;
  const place =
    first === undefined ? '' : ` (${placeText(first, report, unit)}${more > 0 ? ` and ${more} more` : ''})`;
  return `${notice.text}${place} [${notice.code}]`;
}

function placeText(place: NoticePlace, { rulerOffsetMm: [left, top] }: Report, unit: LengthUnit): string {
  const parts = [
    place.element,
    place.line === undefined ? undefined : `line ${place.line}`,
    place.atMm === undefined
      ? undefined
      : `at ${formatLength(place.atMm[0] - left, unit)}, ${formatLength(place.atMm[1] - top, unit)}`,
    place.gapMm === undefined ? undefined : `gap ${formatLength(place.gapMm, unit)}`,
  ];
  return parts.filter((part) => part !== undefined).join(', ');
}
