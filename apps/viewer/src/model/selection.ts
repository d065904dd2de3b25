import type { FindingEntry } from '@pourproof/wording';

/** A place of a finding. The finding is named by its id, which outlives a new proof. */
export interface Selection {
  readonly code: string;
  readonly place: number;
}

/** The same finding in other findings, at the nearest place that it has there; `null` where it is gone. */
export function stillThere(selection: Selection | null, entries: readonly FindingEntry[]): Selection | null {
  const entry = entries.find(({ id }) => id === selection?.code);
  return selection === null || entry === undefined
    ? null
    : { code: entry.id, place: Math.max(0, Math.min(selection.place, entry.places.length - 1)) };
}
