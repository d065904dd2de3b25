import type { Notice, NoticePlace } from '@pourproof/plane';
import { DXF_NOTICES } from './dxf-notices.ts';

/** Places told of one kind of notice; the count in its text goes on. */
const MOST_PLACES = 50;

interface Entry {
  count: number;
  readonly details: Map<string, number>;
  readonly where: NoticePlace[];
}

/** Gathers what happens while a DXF file is read, many of one kind into one notice. */
export class NoticeLog {
  private readonly entries = new Map<string, Entry>();

  /** Adds one case of a code of `DXF_NOTICES`; equal details are counted together. */
  add(code: string, place: NoticePlace, detail = ''): void {
    let entry = this.entries.get(code);
    if (!entry) {
      entry = { count: 0, details: new Map(), where: [] };
      this.entries.set(code, entry);
    }
    entry.count++;
    entry.details.set(detail, (entry.details.get(detail) ?? 0) + 1);
    if (entry.where.length < MOST_PLACES) {
      entry.where.push(place);
    }
  }

  /** All notices, in the order of their first cases. */
  notices(): Notice[] {
    return [...this.entries].map(([code, { count, details, where }]) => {
      const kind = DXF_NOTICES[code];
      if (!kind) {
        throw new TypeError(`No text for the notice ${code}: add it to DXF_NOTICES.`);
      }
      return { code, text: kind.say(count, listOf(details)), where, severity: kind.severity };
    });
  }
}

/** `3 × MLINE, 1 × WIPEOUT`, the first dozen. */
function listOf(details: ReadonlyMap<string, number>): string {
  const items = [...details].filter(([detail]) => detail !== '').map(([detail, n]) => `${n} × ${detail}`);
  return items.length > 12
    ? `${items.slice(0, 12).join(', ')} and ${items.length - 12} more`
    : items.join(', ');
}
