import { JobError } from '../refusals/job-error.ts';
import { nearestWord } from './nearest-word.ts';

/**
 * The row of a table of materials by its id.
 *
 * @param key the setting that names it, for the message
 * @throws {JobError} when there is no such row, with the ids that there are
 */
export function knownRow<Row>(key: string, id: string, table: Readonly<Record<string, Row>>): Row {
  const row = Object.hasOwn(table, id) ? table[id] : undefined;
  if (row === undefined) {
    const known = Object.keys(table);
    throw new JobError('unknown-material', key, { id, known, near: nearestWord(id, known) });
  }
  return row;
}
