import { nearestWord } from '@pourproof/job';
import { wrap } from '@pourproof/wording';
import type { Io } from '../io.ts';
import { noticeTable } from '../notice-table.ts';
import { columnsOf } from '../print/look.ts';
import { LISTS, type ListRow } from '../tables/lists.ts';
import { UsageError } from '../usage-error.ts';

const NOTICES = 'notices';

/**
 * `pourproof list WHAT`: the names that flags take, or the codes of findings and notices.
 *
 * @throws {UsageError} when there is no such list
 */
export async function list(argv: readonly string[], io: Io): Promise<number> {
  const [what, ...rest] = argv;
  const names = [...Object.keys(LISTS), NOTICES];
  if (what === undefined || !names.includes(what) || rest.length > 0) {
    const near = what === undefined || rest.length > 0 ? null : nearestWord(what, names);
    throw new UsageError(
      what === undefined
        ? 'list needs a name.'
        : rest.length > 0
          ? 'list takes one name.'
          : `there is no list "${what}".`,
      `${near === null ? '' : `Did you mean ${near}? `}Lists: ${names.join(', ')}.`,
    );
  }
  const table = LISTS[what] ?? (await noticeRows(io));
  const columns = columnsOf(io.out);
  const width = Math.max(...table.map(([first]) => first.length)) + 2;
  // beside codes that take half a narrow terminal nothing can be read
  const lines = table.flatMap(([first, second]) =>
    width > columns / 2
      ? [first, ...wrap(second, columns, '  ')]
      : wrap(second, columns, first.padEnd(width)),
  );
  io.out.write(`${lines.join('\n')}\n`);
  return 0;
}

/** The codes of notices with what each means. */
async function noticeRows(io: Io): Promise<readonly ListRow[]> {
  return (await noticeTable(io)).map(({ code, meaning }): ListRow => [code, meaning]);
}
