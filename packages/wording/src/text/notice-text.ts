import { flagName, type SettingName } from '@pourproof/job';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import type { ToldNotice } from '../facts/reader-notices.ts';

/** A notice with its first place and its code: `Text was left out (text#name, line 7) [text-not-outlined]`. */
export function noticeText(notice: ToldNotice, report: Report, unit: LengthUnit): string {
  const [first] = notice.where;
  const more = notice.where.length - 1;
  const place =
    first === undefined
      ? ''
      : ` (${noticePlaceText(first, report, unit, flagName)}${more > 0 ? ` and ${more} more` : ''})`;
  return `${notice.text}${place} [${notice.code}]`;
}

/**
 * A place of a notice: what is there, and where from the left and top edges of the artwork; `''` where nothing is known.
 *
 * @param name what settings are called by who reads it
 */
export function noticePlaceText(
  place: ToldNotice['where'][number],
  { rulerOffsetMm: [left, top] }: Pick<Report, 'rulerOffsetMm'>,
  unit: LengthUnit,
  name: SettingName,
): string {
  const parts = [
    place.setting === undefined ? undefined : name(place.setting),
    place.element,
    place.line === undefined ? undefined : `line ${place.line}`,
    place.atMm === undefined
      ? undefined
      : `at ${formatLength(place.atMm[0] - left, unit)}, ${formatLength(place.atMm[1] - top, unit)}`,
    place.gapMm === undefined ? undefined : `gap ${formatLength(place.gapMm, unit)}`,
  ];
  return parts.filter((part) => part !== undefined).join(', ');
}
