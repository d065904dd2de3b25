import { BIT_FORMS, bitSize, nearestWord } from '@pourproof/job';
import { cutterSizes, resins, sealers, woods } from '@pourproof/materials';
import { FINDING_CODES } from '@pourproof/proof';
import { findingTitle, wrap } from '@pourproof/wording';
import type { Io } from '../io.ts';
import { noticeTable } from '../notice-table.ts';
import { columnsOf } from '../print/look.ts';
import { UsageError } from '../usage-error.ts';

type Row = readonly [first: string, second: string];

type Lister = (io: Io) => Promise<readonly Row[]> | readonly Row[];

/** What can be listed, each as a table of two columns. */
const LISTS: ReadonlyMap<string, Lister> = new Map<string, Lister>([
  ['woods', () => Object.entries(woods).map(([id, wood]): Row => [id, `${wood.name}, ${wood.botanical}`])],
  ['seals', () => Object.entries(sealers).map(([id, sealer]): Row => [id, sealer.name])],
  ['resins', () => Object.entries(resins).map(([id, resin]): Row => [id, resin.name])],
  ['bits', bitRows],
  ['findings', () => FINDING_CODES.map((code): Row => [code, findingTitle(code)])],
  ['notices', noticeRows],
]);

/**
 * `pourproof list WHAT`: the names that flags take, or the codes of findings and notices.
 *
 * @throws {UsageError} when there is no such list
 */
export async function list(argv: readonly string[], io: Io): Promise<number> {
  const [what, ...rest] = argv;
  const rows = LISTS.get(what ?? '');
  if (what === undefined || rows === undefined || rest.length > 0) {
    const names = [...LISTS.keys()];
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
  const table = await rows(io);
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

function bitRows(): readonly Row[] {
  const flat = cutterSizes.value.filter((size) => size.shape === 'flat');
  return [
    ...flat.map((size): Row => [`flat:${size.label}`, `${bitSize(size.diameterMm, 'mm')}, a common size`]),
    ...BIT_FORMS.filter((form) => !form.startsWith('flat')).map(
      (form): Row => [form, 'how such a bit is written'],
    ),
  ];
}

/** The codes of notices with what each means. */
async function noticeRows(io: Io): Promise<readonly Row[]> {
  return (await noticeTable(io)).map(({ code, meaning }): Row => [code, meaning]);
}
