import type { Notice, NoticePlace } from '@pourproof/plane';
import { SVG_NOTICES, type SvgNoticeCode } from './svg-notices.ts';

/** Places named in one notice; its text gives the full count. */
const MAX_PLACES = 50;

interface Entry {
  count: number;
  readonly where: NoticePlace[];
  readonly details: Set<string>;
  min: number;
  max: number;
}

/** Collects what a reading has to say, one notice for each kind, in the order of first sight. */
export class NoticeBook {
  private readonly entries = new Map<SvgNoticeCode, Entry>();

  /** Writes down one place of a kind; `detail` goes into the text, of `measure` the smallest and the largest. */
  add(code: SvgNoticeCode, place: NoticePlace = {}, detail = '', measure?: number): void {
    let entry = this.entries.get(code);
    if (entry === undefined) {
      entry = { count: 0, where: [], details: new Set(), min: Infinity, max: -Infinity };
      this.entries.set(code, entry);
    }
    entry.count++;
    if (measure !== undefined) {
      entry.min = Math.min(entry.min, measure);
      entry.max = Math.max(entry.max, measure);
    }
    if (entry.where.length < MAX_PLACES && Object.keys(place).length > 0) {
      entry.where.push(place);
    }
    if (detail !== '' && entry.details.size < MAX_PLACES) {
      entry.details.add(detail);
    }
  }

  /** All notices so far. */
  notices(): Notice[] {
    return [...this.entries].map(([code, { count, where, details, min, max }]) => {
      const { severity, text } = SVG_NOTICES[code];
      return { code, severity, where, text: text(count, listed([...details]), { min, max }) };
    });
  }
}

/** At most five details, and how many more there are. */
function listed(details: readonly string[]): string {
  const shown = details.slice(0, 5).join(', ');
  return details.length > 5 ? `${shown} and ${details.length - 5} more` : shown;
}
