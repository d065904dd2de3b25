import { shopValues, type UsualValue, usualValues } from '../facts/usual-values.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import { takenLines } from '../text/taken-lines.ts';
import { wrap } from '../text/wrap.ts';
import { type CompareTable, compareCells, NOTHING } from './compare-cells.ts';
import { compareSummary, neverMade } from './compare-summary.ts';
import { type Compared, hasSeveralArtworks } from './compared.ts';
import { fittedTable } from './fitted-table.ts';
import { bestText, summaryColumns } from './summary-columns.ts';
import { type TextColumn, tableLines, tableWidth } from './text-table.ts';

/** How the table is laid out. */
export interface CompareTextOptions {
  /** Of the terminal. */
  readonly columns: number;
}

/** Sentences are not set wider, however wide the terminal is: longer lines are hard to read. */
const MOST_COLUMNS = 100;

/** More values of one setting are told by the table alone (our choice: a range of numbers is read better there). */
const MOST_SUMMARISED = 24;

/**
 * A comparison as text to read in a terminal: a table whose letters say below it what is gravest, then what each value of each setting
 * comes to. Where the table is too wide, what matters least is left out and named; where even that does not do, the
 * figures stand below what they are of.
 */
export function compareText(compared: Compared, { columns }: CompareTextOptions): string {
  const table = compareCells(compared);
  const words = Math.min(columns, MOST_COLUMNS);
  const letters = new Letters();
  const folded = foldedTable(table);
  const body = fittedTable(folded, letters, columns) ?? stacked(folded, letters, words);
  const summaries = compareSummary(compared).filter(({ values }) => values.length <= MOST_SUMMARISED);
  return `${[
    ...body.lines,
    '',
    ...letters.lines(words),
    ...body.notes.flatMap((note) => wrap(note, words)),
    ...(letters.isEmpty && body.notes.length === 0 ? [] : ['']),
    ...summaries.flatMap((each) => [
      ...tableLines(narrowed(summaryColumns(each, compared), columns)),
      ...wrap(bestText(each), words),
      '',
    ]),
    ...wrap(ending(compared), words),
    ...takenOf(compared, words),
  ].join('\n')}\n`;
}

/** Letters that stand in the table for what is said below it. */
class Letters {
  readonly #of = new Map<string, string>();

  get isEmpty(): boolean {
    return this.#of.size === 0;
  }

  /** The letters of what is said of a row. */
  cell(remarks: CompareTable['rows'][number]['remarks']): string {
    return remarks
      .map(({ code, text }) => {
        const said = code === '' ? text : `${text} (${code})`;
        const known = this.#of.get(said) ?? letterName(this.#of.size);
        this.#of.set(said, known);
        return known;
      })
      .join(' ');
  }

  lines(columns: number): readonly string[] {
    return [...this.#of].flatMap(([text, letter]) => wrap(text, columns, `${letter}  `));
  }
}

/** a to z, then aa, ab … */
function letterName(k: number): string {
  const last = String.fromCharCode(97 + (k % 26));
  return k < 26 ? last : `${letterName(Math.floor(k / 26) - 1)}${last}`;
}

/** Rows of one artwork that are all refused for one reason become one. */
function foldedTable(table: CompareTable): CompareTable {
  const { given, rows } = table;
  if (given[0] !== 'artwork' || given.length === 1) {
    return table;
  }
  const said = ({ remarks }: CompareTable['rows'][number]): string =>
    remarks.map(({ text }) => text).join(' ');
  const isFolded = (own: CompareTable['rows']): boolean =>
    own.length > 1 && own.every((row) => row.found === null && said(row) === said(own[0] ?? row));
  const artworks = [...new Set(rows.map((row) => row.given[0]))];
  return {
    ...table,
    rows: artworks.flatMap((artwork) => {
      const own = rows.filter((row) => row.given[0] === artwork);
      return isFolded(own)
        ? own
            .slice(0, 1)
            .map((row) => ({ ...row, given: [artwork ?? '', ...given.slice(1).map(() => 'all')] }))
        : own;
    }),
  };
}

/** Each row with its figures below it. */
function stacked(
  table: CompareTable,
  letters: Letters,
  columns: number,
): { readonly lines: readonly string[]; readonly notes: readonly string[] } {
  const glued = (text: string): string => text.replaceAll(' ', '\u00a0');
  return {
    notes: [],
    lines: table.rows.flatMap(({ given, found, remarks }) => {
      const named = given.map((cell, k) => glued(`${table.given[k]} ${cell}`));
      const why = letters.cell(remarks);
      const figures = (found ?? ['refused']).flatMap((cell, k) => {
        const column = table.found[k]?.name ?? '';
        const text = k === 0 ? `${cell}${why === '' ? '' : ` (${why})`}` : `${column} ${cell}`;
        return cell === NOTHING ? [] : [glued(text)];
      });
      return [...wrap(named.join(', '), columns), ...wrap(figures.join(', '), columns, '  ')];
    }),
  };
}

/** What all rows take from the shop and as usual. */
function takenOf({ job, keys }: Compared, columns: number): readonly string[] {
  if (job === undefined) {
    return [];
  }
  const isShared = ({ key }: UsualValue): boolean => !keys.includes(key);
  const where = '; pourproof vet --full has all';
  return [
    ...takenLines(shopValues(job).filter(isShared), 'Shop   ', false, columns, where),
    ...takenLines(usualValues(job).filter(isShared), 'Usual  ', false, columns, where),
  ];
}

/** As many columns from the left as there is room for; two at least. */
function narrowed(all: readonly TextColumn[], columns: number): readonly TextColumn[] {
  let shown = all;
  while (shown.length > 2 && tableWidth(shown) > columns) {
    shown = shown.slice(0, -1);
  }
  return shown;
}

/** How many rows are clear, and what the words of the table mean. */
function ending(compared: Compared): string {
  const { rows } = compared;
  const count = (is: string): number =>
    rows.filter(({ outcome }) => (outcome.is === 'judged' ? outcome.figures.verdict : outcome.is) === is)
      .length;
  const parts = [
    `${count('clear')} clear`,
    `${count('caution')} with cautions`,
    `${count('stop')} stopped`,
    ...(count('refused') === 0 ? [] : [`${count('refused')} refused`]),
    ...(count('fault') === 0 ? [] : [counted(count('fault'), 'fault of ours', 'faults of ours')]),
  ];
  const never = hasSeveralArtworks(compared) ? neverMade(compared) : [];
  const stuck =
    never.length === 0
      ? ''
      : ` Stopped in every row: ${never.map((name) => name.replaceAll(' ', '\u00a0')).join(', ')}; pourproof remedy seeks ways.`;
  return `${counted(rows.length, 'row')}: ${parts.join(', ')}.${stuck} Lost is stroke narrower than the smallest bit; travel is the median in the worst wood, and what it may come to; no ways out were sought.`;
}
