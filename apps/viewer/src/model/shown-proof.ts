import type { LengthUnit } from '@pourproof/plane';
import { type FindingEntry, findingEntries } from '@pourproof/wording';
import type { ArtworkSource } from './artwork-source.ts';
import type { PageState } from './page-state.ts';
import type { PageVetted } from './question.ts';

/** What one proof was asked for. */
export type Asked = Pick<PageState, 'source' | 'job' | 'materials'> & { readonly source: ArtworkSource };

/**
 * One proof with the artwork and the job that it is of. Whatever the page shows, saves or prints of a proof comes from one of these, never
 * from the ticket, which may have moved on.
 */
export interface ShownProof extends Asked, Pick<PageVetted, 'report' | 'picture'> {
  /** The job with every value in its place. */
  readonly settled: PageVetted['job'];
  readonly unit: LengthUnit;
  readonly entries: readonly FindingEntry[];
}

/** A proof as it is shown. */
export function shownProof(asked: Asked, { report, picture, job: settled }: PageVetted): ShownProof {
  const unit = settled.units;
  const entries = findingEntries(report, { units: unit, materials: asked.materials });
  return { ...asked, report, picture, settled, unit, entries };
}

/** Whether two questions have the same answer. */
export function isSameQuestion(a: Asked, b: Asked): boolean {
  return (
    a.materials === b.materials &&
    isSameArtwork(a.source, b.source) &&
    JSON.stringify(a.job) === JSON.stringify(b.job)
  );
}

function isSameArtwork(a: ArtworkSource, b: ArtworkSource): boolean {
  const isSameContent =
    a.kind === 'file'
      ? b.kind === 'file' && a.bytes === b.bytes
      : b.kind === 'lettering' && a.text === b.text;
  return isSameContent && a.name === b.name && a.font?.bytes === b.font?.bytes;
}
