import { counted } from '../findings/parts-of-sentences.ts';
import { wrap } from '../text/wrap.ts';
import { compareCells } from './compare-cells.ts';
import type { Compared } from './compared.ts';

const GAP = '  ';

/** How the table is laid out. */
export interface CompareTextOptions {
  readonly columns: number;
}

/**
 * A comparison as text to read in a terminal: a table, each row with what is gravest below it; where the table is too wide, the figures
 * stand below what they are of.
 */
export function compareText(compared: Compared, { columns }: CompareTextOptions): string {
  const table = compareCells(compared);
  const heads = [...table.given, ...table.found];
  const lines = table.rows.map(({ given, found }) => [...given, ...(found ?? ['refused'])]);
  const widths = heads.map((head, k) =>
    Math.max(head.length, ...lines.map((line) => (line[k] ?? '').length)),
  );
  const whole = widths.reduce((sum, width) => sum + width, 0) + GAP.length * (widths.length - 1);
  const isWide = whole > columns;
  const padded = (cells: readonly string[]): string =>
    cells
      .map((cell, k) => cell.padEnd(widths[k] ?? 0))
      .join(GAP)
      .trimEnd();
  const body = table.rows.flatMap(({ given, found, remark }, k) => [
    ...(isWide ? stacked(table, given, found ?? ['refused'], columns) : [padded(lines[k] ?? [])]),
    ...(remark === '' ? [] : wrap(remark, columns, '    ')),
  ]);
  return `${[...(isWide ? [] : [padded(heads)]), ...body, '', ...wrap(summary(compared), columns)].join('\n')}\n`;
}

function stacked(
  table: ReturnType<typeof compareCells>,
  given: readonly string[],
  found: readonly string[],
  columns: number,
): readonly string[] {
  const named = given.map((cell, k) => `${table.given[k]} ${cell}`.replaceAll(' ', '\u00a0'));
  const figures = found.flatMap((cell, k) =>
    cell === '–' ? [] : [(k === 0 ? cell : `${table.found[k]} ${cell}`).replaceAll(' ', '\u00a0')],
  );
  return [...wrap(named.join(', '), columns), ...wrap(figures.join(', '), columns, '  ')];
}

/** How many rows are clear. */
function summary({ rows }: Compared): string {
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
  return `${counted(rows.length, 'row')}: ${parts.join(', ')}. Lost is stroke narrower than the smallest bit; travel is the median in the worst wood, and what it may come to; no ways out were sought.`;
}
