import type { LengthUnit } from '@pourproof/plane';
import { type FindingEntry, findingEntries } from '@pourproof/wording';
import type { Asked } from './asked.ts';
import type { PageVetted } from './question.ts';

/**
 * One proof with the artwork and the job that it is of. Whatever the page shows, saves or prints of a proof comes from one of these, never
 * from the ticket, which may have moved on.
 */
export interface ShownProof extends Asked, Pick<PageVetted, 'report' | 'picture'> {
  /** The job with every value in its place. */
  readonly settled: PageVetted['job'];
  readonly unit: LengthUnit;
  readonly entries: readonly FindingEntry[];
  /** Whether the ways out of its findings have been tried; none are named before. */
  readonly isWhole: boolean;
}

/** A proof as it is shown. */
export function shownProof(
  asked: Asked,
  { report, picture, job: settled }: PageVetted,
  isWhole: boolean,
): ShownProof {
  const unit = settled.units;
  const entries = findingEntries(report, { units: unit, materials: asked.tables.materials });
  return { ...asked, report, picture, settled, unit, entries, isWhole };
}
