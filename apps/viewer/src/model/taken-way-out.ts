import type { FindingEntry } from '@pourproof/wording';

/** A way out that was taken: of which finding, the how manieth it was, and which there were. */
export interface TakenWayOut {
  readonly code: string;
  readonly title: string;
  readonly at: number;
  readonly codes: readonly string[];
}

/** What has come of a way out, said for eye and ear. */
export function toldAfter({ code, title, codes }: TakenWayOut, now: readonly FindingEntry[]): string {
  const own = now.find((entry) => entry.id === code);
  const added = now.filter((entry) => !codes.includes(entry.id)).map((entry) => `“${entry.title}”`);
  const left = now.length === 1 ? '1 finding' : `${now.length} findings`;
  return [
    own === undefined
      ? `“${title}” is gone.`
      : `“${title}” is still there: ${own.measured}, limit ${own.limit}.`,
    added.length === 0 ? '' : `New: ${added.join(', ')}.`,
    now.length === 0 ? 'Nothing else is found.' : `Now there ${now.length === 1 ? 'is' : 'are'} ${left}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
