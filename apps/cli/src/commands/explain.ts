import { knownWord, nearestWord } from '@pourproof/job';
import { wrap } from '@pourproof/wording';
import type { Io } from '../io.ts';
import { type NoticeRow, noticeTable } from '../notice-table.ts';
import { columnsOf } from '../print/look.ts';
import { readPage } from '../read-page.ts';
import { CODES } from '../tables/lists.ts';
import { UsageError } from '../usage-error.ts';

/**
 * `pourproof explain CODE`: the page of a finding as plain text, or what a notice means and what to do.
 *
 * @throws {UsageError} when there is no such code
 */
export async function explain(argv: readonly string[], io: Io): Promise<number> {
  const [typed, ...rest] = argv;
  const columns = columnsOf(io.out);
  const notices = await noticeTable(io);
  const codes = [...CODES, ...notices.map(({ code }) => code)];
  const code =
    typed === undefined || rest.length > 0 ? null : knownWord(typed.replace(/^\[|\]$/gu, ''), codes);
  const finding = CODES.find((each) => each === code);
  const notice = notices.find((each) => each.code === code);
  if (finding !== undefined) {
    io.out.write(`${plainText(await readPage(`findings/${finding}.md`, io), columns)}\n`);
  } else if (notice !== undefined) {
    io.out.write(`${noticeText(notice, columns)}\n`);
  } else {
    throw unknownCode([typed, ...rest].filter((word) => word !== undefined).join(' '), codes);
  }
  return 0;
}

function unknownCode(typed: string, codes: readonly string[]): UsageError {
  const near = nearestWord(typed, codes);
  return new UsageError(
    typed === ''
      ? 'explain needs the code of a finding or a notice.'
      : `there is no finding or notice "${typed}".`,
    `${near === null ? '' : `Did you mean ${near}? `}All codes: pourproof list findings, pourproof list notices.`,
  );
}

function noticeText({ code, meaning, remedy }: NoticeRow, columns: number): string {
  return [
    ...wrap(`Notice ${code}, from reading the artwork`, columns),
    '',
    ...wrap(meaning, columns),
    '',
    ...wrap(remedy, columns, 'What to do: '),
  ].join('\n');
}

/** Markdown of the manual's plain kind (headings, paragraphs, lists, tables, bold, code, links) as plain text. */
function plainText(markdown: string, columns: number): string {
  return markdown
    .trim()
    .split(/\n{2,}/u)
    .flatMap((block) => [...blockLines(block, columns), ''])
    .join('\n')
    .trimEnd();
}

function blockLines(block: string, columns: number): string[] {
  const text = block
    .replace(/^#+\s*/gmu, '')
    .replace(/\*\*([^*]+)\*\*|\*([^*]+)\*/gu, (_, bold?: string, slanted?: string) => bold ?? slanted ?? '')
    .replace(/`([^`]*)`/gu, '$1')
    .replace(/\[([^\]]+)\]\([^)]*\)/gu, '$1');
  const items = text.startsWith('|') ? tableItems(text) : text.split(/\n(?=[-*] )/u);
  return items.flatMap((item) =>
    /^[-*] /u.test(item) ? wrap(item.slice(2), columns, '  - ') : wrap(item, columns),
  );
}

/**
 * A table as a list, which a narrow terminal holds too: of each row its first cell, then the others under the names of
 * their columns. Empty cells say nothing.
 */
function tableItems(table: string): string[] {
  const [names = [], , ...rows] = table.split('\n').map((line) =>
    line
      .replace(/^\||\|\s*$/gu, '')
      .split('|')
      .map((cell) => cell.trim()),
  );
  return rows.map(([subject = '', ...cells]) => {
    const said = cells.flatMap((cell, k) => (cell === '' ? [] : [`${names[k + 1] ?? ''} ${cell}`.trim()]));
    return `- ${subject}: ${said.join('; ')}`;
  });
}
