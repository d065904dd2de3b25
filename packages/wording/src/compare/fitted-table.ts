import { type CompareTable, NOTHING } from './compare-cells.ts';
import { lengthOf, type TextColumn, tableLines, tableWidth } from './text-table.ts';

/** What a table became, and what is to be said below it. */
export interface FittedTable {
  readonly lines: readonly string[];
  readonly notes: readonly string[];
}

/** A figure that is the same in so many rows is said once instead (our choice). */
const LEAST_ALIKE = 3;

/** Names of artworks are cut down to this before figures are left out, and after that to less, characters (our choice). */
const SHORT_NAME = 20;
const SHORTEST_NAME = 10;

/**
 * A comparison as a table of at most `columns` characters: names of artworks are shortened, then figures left out that matter least; `null` where what
 * is compared is wider by itself.
 *
 * @param letters stand for what is said of a row
 */
export function fittedTable(
  { given, found, rows }: CompareTable,
  letters: { cell(remarks: CompareTable['rows'][number]['remarks']): string },
  columns: number,
): FittedTable | null {
  const why = rows.map(({ remarks }) => letters.cell(remarks));
  const figures = found.map(
    ({ name, unit }, k): TextColumn => ({
      title: name,
      unit,
      cells: rows.map(({ bare }) => bare?.[k] ?? (k === 0 ? 'refused' : NOTHING)),
      isRight: k > 0,
    }),
  );
  const alike = found.flatMap(({ leaves }, k) => (leaves > 0 && isAlike(rows, k) ? [k] : []));
  const first = given.map(
    (title, k): TextColumn => ({
      title,
      unit: '',
      cells: rows.map((row) => row.given[k] ?? ''),
      isRight: false,
    }),
  );
  const build = (most: number, out: ReadonlySet<number>): readonly TextColumn[] => [
    ...first.map((column, k) => (k === 0 && column.title === 'artwork' ? shortened(column, most) : column)),
    ...figures.slice(0, 1),
    ...(why.some((cell) => cell !== '') ? [{ title: 'why', unit: '', cells: why, isRight: false }] : []),
    ...figures.filter((_, k) => k > 0 && !out.has(k)),
  ];
  const left = found
    .map(({ leaves }, k) => ({ leaves, k }))
    .filter(({ leaves, k }) => leaves > 0 && !alike.includes(k))
    .toSorted((a, b) => b.leaves - a.leaves)
    .map(({ k }) => k);
  const choices = [
    [Number.POSITIVE_INFINITY, 0] as const,
    ...Array.from({ length: left.length + 1 }, (_, count) => [SHORT_NAME, count] as const),
    [SHORTEST_NAME, left.length] as const,
  ];
  for (const [most, count] of choices) {
    const dropped = left.slice(0, count);
    const table = build(most, new Set([...alike, ...dropped]));
    if (tableWidth(table) <= columns) {
      return { lines: tableLines(table), notes: notesOf(found, { alike, dropped, rows }) };
    }
  }
  return null;
}

/** Whether a figure is the same in all rows that have one. */
function isAlike(rows: CompareTable['rows'], k: number): boolean {
  const cells = rows.flatMap(({ found }) => (found === null ? [] : [found[k]]));
  return cells.length >= LEAST_ALIKE && new Set(cells).size === 1;
}

function notesOf(
  found: CompareTable['found'],
  {
    alike,
    dropped,
    rows,
  }: {
    readonly alike: readonly number[];
    readonly dropped: readonly number[];
    readonly rows: CompareTable['rows'];
  },
): readonly string[] {
  const cells = rows.find((row) => row.found !== null)?.found ?? [];
  const same = alike.flatMap((k) => (cells[k] === NOTHING ? [] : [`${found[k]?.name} ${cells[k]}`]));
  const names = dropped.toSorted((a, b) => a - b).map((k) => found[k]?.name);
  return [
    ...(same.length === 0 ? [] : [`The same in all rows: ${same.join(', ')}.`]),
    ...(names.length === 0
      ? []
      : [`Left out for want of room: ${names.join(', ')}; a wider terminal, --csv and --json have all.`]),
  ];
}

/** How much of a name is kept of its beginning where it is cut, as a share: both ends, or the one in which names differ. */
const KEPT_HEADS = [0.5, 0, 1] as const;

/** A column with its cells cut to at most so many characters, or as many as they need to stay apart. */
function shortened(column: TextColumn, most: number): TextColumn {
  const longest = Math.max(...column.cells.map(lengthOf));
  const apart = new Set(column.cells).size;
  for (let length = most; length < longest; length++) {
    for (const head of KEPT_HEADS) {
      const cells = column.cells.map((cell) => cut(cell, length, head));
      if (new Set(cells).size === apart) {
        return { ...column, cells };
      }
    }
  }
  return column;
}

/** The beginning and the end of a text. */
function cut(text: string, most: number, headShare: number): string {
  const chars = [...text];
  const head = Math.ceil((most - 1) * headShare);
  return chars.length <= most
    ? text
    : `${chars.slice(0, head).join('')}…${chars.slice(chars.length - (most - 1 - head)).join('')}`;
}
