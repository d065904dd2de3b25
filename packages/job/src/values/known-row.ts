import { JobError } from '../refusals/job-error.ts';
import { nearestWord } from './nearest-word.ts';

/** What a table of materials has in each row: its printed name, and of woods the botanical one. */
interface Named {
  readonly name: string;
  readonly botanical?: string;
}

/**
 * The id of a row of a table of materials, typed as its id or as its printed name; capitals, and whether
 * words are parted by blanks, hyphens or underscores, do not count.
 *
 * @param key the setting that names it, for the message
 * @throws {JobError} when there is no such row, with the ids that there are
 */
export function knownId(key: string, typed: string, table: Readonly<Record<string, Named>>): string {
  if (Object.hasOwn(table, typed)) {
    return typed;
  }
  const text = folded(typed);
  const found = Object.entries(table).filter(([id, row]) =>
    namesOf(id, row).some((name) => folded(name) === text),
  );
  const [only] = found;
  if (only === undefined || found.length > 1) {
    const known = Object.keys(table);
    throw new JobError('unknown-material', key, { id: typed, known, near: nearIds(typed, table) });
  }
  return only[0];
}

/**
 * The row of a table of materials, as {@link knownId} finds it.
 *
 * @throws {JobError} when there is no such row, with the ids that there are
 */
export function knownRow<Row extends Named>(
  key: string,
  typed: string,
  table: Readonly<Record<string, Row>>,
): Row {
  return table[knownId(key, typed, table)] as Row;
}

/** One of a few words, whatever its capitals and blanks; `null` if it is none of them. */
export function knownWord<Word extends string>(typed: string, words: readonly Word[]): Word | null {
  return words.find((word) => word === typed) ?? words.find((word) => folded(word) === folded(typed)) ?? null;
}

/** The ids that may have been meant: those with the word in a name, else the nearest by its letters. */
function nearIds(typed: string, table: Readonly<Record<string, Named>>): readonly string[] {
  const rows = Object.entries(table);
  const text = folded(typed);
  const within = rows.filter(([id, row]) =>
    namesOf(id, row).some((name) => ` ${folded(name)} `.includes(` ${text} `)),
  );
  if (text !== '' && within.length > 0) {
    return within.map(([id]) => id);
  }
  const names = rows.flatMap(([id, row]) => namesOf(id, row).map((name) => [folded(name), id] as const));
  const near = nearestWord(
    text,
    names.map(([name]) => name),
  );
  return names.filter(([name]) => name === near).map(([, id]) => id);
}

function namesOf(id: string, { name, botanical }: Named): readonly string[] {
  return botanical === undefined ? [id, name] : [id, name, botanical];
}

function folded(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ');
}
