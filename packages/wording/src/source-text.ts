import { type Source, sources } from '@pourproof/materials';
import { judgementSources } from '@pourproof/proof';

const ALL: Readonly<Record<string, Source>> = { ...sources, ...judgementSources };

/**
 * The title of a source, with its year, for a reader of a finding.
 *
 * @throws {RangeError} when no source has the id
 */
export function sourceText(id: string): string {
  if (!Object.hasOwn(ALL, id)) {
    throw new RangeError(`no source has the id "${id}"`);
  }
  const { title, year } = ALL[id] as Source;
  return year === undefined ? title : `${title} (${year})`;
}
