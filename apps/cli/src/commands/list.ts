import { nearestWord } from '@pourproof/job';
import { wrap } from '@pourproof/wording';
import type { Io } from '../io.ts';
import { noticeTable } from '../notice-table.ts';
import { columnsOf } from '../print/look.ts';
import { LISTS, type ListRow } from '../tables/lists.ts';
import { UsageError } from '../usage-error.ts';

const NOTICES = 'notices';

/**
 * `pourproof list WHAT [--shop FILE.json]`: the names that flags take, or the codes of findings and notices; of a shop file those that it has.
 *
 * @throws {UsageError} when there is no such list, or the shop file has none
 * @throws {JobError} when the shop file cannot be used
 */
export async function list(argv: readonly string[], io: Io): Promise<number> {
  const { what, shopPath } = asked(argv);
  const table =
    shopPath === null ? (LISTS[what] ?? (await noticeRows(io))) : await rowsOfShop(what, shopPath, io);
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

/** What is asked for: a list, and the shop file whose own it is to be. */
function asked(argv: readonly string[]): { readonly what: string; readonly shopPath: string | null } {
  const at = argv.findIndex((word) => word === '--shop' || word.startsWith('--shop='));
  const typed = at === -1 ? null : ((argv[at]?.split('=').slice(1).join('=') || argv[at + 1]) ?? '');
  const words =
    at === -1 ? argv : argv.filter((_, k) => k !== at && (k !== at + 1 || argv[at]?.includes('=')));
  const [what, ...rest] = words;
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
  if (typed === '') {
    throw new UsageError('--shop needs a file.', `Type it as in: pourproof list ${what} --shop shop.json`);
  }
  return { what, shopPath: typed };
}

async function rowsOfShop(what: string, typed: string, io: Io): Promise<readonly ListRow[]> {
  const { SHOP_LIST_NAMES, shopRows } = await import('../shop-lists.ts');
  if (!SHOP_LIST_NAMES.includes(what)) {
    throw new UsageError(
      `a shop file has no ${what}.`,
      `With --shop: ${SHOP_LIST_NAMES.join(', ')}. Leave --shop out for ${what}.`,
    );
  }
  const { placeOf, shopAt } = await import('../makers-files.ts');
  const shop = await shopAt(placeOf(typed, io), io);
  const rows = shopRows(what, shop);
  if (rows.length === 0) {
    throw new UsageError(
      `${shop.name} lists no ${what}.`,
      `Without --shop, list ${what} names all that are known.`,
    );
  }
  return rows;
}

/** The codes of notices with what each means. */
async function noticeRows(io: Io): Promise<readonly ListRow[]> {
  return (await noticeTable(io)).map(({ code, meaning }): ListRow => [code, meaning]);
}
