import { nearestWord } from '@pourproof/job';
import { FINDING_CODES } from '@pourproof/proof';
import { wrap } from '@pourproof/wording';
import type { Io } from '../io.ts';
import { readPage } from '../read-page.ts';
import { UsageError } from '../usage-error.ts';

const COLUMNS = 80;

/**
 * `pourproof explain CODE`: the page of a finding as plain text.
 *
 * @throws {UsageError} when there is no such finding
 */
export async function explain(argv: readonly string[], io: Io): Promise<number> {
  const [code, ...rest] = argv;
  const known = FINDING_CODES.find((each) => each === code);
  if (known === undefined || rest.length > 0) {
    const near = code === undefined ? null : nearestWord(code, FINDING_CODES);
    throw new UsageError(
      code === undefined
        ? 'explain needs the code of a finding.'
        : `there is no finding "${[code, ...rest].join(' ')}".`,
      `${near === null ? '' : `Did you mean ${near}? `}Codes: ${FINDING_CODES.join(', ')}.`,
    );
  }
  io.out.write(`${plainText(await readPage(`findings/${known}.md`, io))}\n`);
  return 0;
}

/** Markdown of the manual's plain kind (headings, paragraphs, lists, bold, code, links) as text of 80 columns. */
function plainText(markdown: string): string {
  return markdown
    .trim()
    .split(/\n{2,}/u)
    .flatMap((block) => [...blockLines(block), ''])
    .join('\n')
    .trimEnd();
}

function blockLines(block: string): string[] {
  const text = block
    .replace(/^#+\s*/gmu, '')
    .replace(/\*\*([^*]+)\*\*|\*([^*]+)\*/gu, (_, bold?: string, slanted?: string) => bold ?? slanted ?? '')
    .replace(/`([^`]*)`/gu, '$1')
    .replace(/\[([^\]]+)\]\([^)]*\)/gu, '$1');
  const items = text.split(/\n(?=[-*] )/u);
  return items.flatMap((item) =>
    /^[-*] /u.test(item) ? wrap(item.slice(2), COLUMNS, '  - ') : wrap(item, COLUMNS),
  );
}
