import { SETTING_KEYS } from '@pourproof/job';
import { type Compared, compareCsv, compareSummary, compareText, type ToldRow } from '@pourproof/wording';
import { compare as compareRows } from 'pourproof/many';
import { compareRequest } from '../compare-request.ts';
import type { Io } from '../io.ts';
import { pathFlag } from '../makers-files.ts';
import { parseFlags } from '../parse-flags.ts';
import { tableColumnsOf } from '../print/look.ts';
import { refuseStrayOf } from '../refuse-stray-flags.ts';
import { type Output, refuseUnsafeOutputs, writeOutput } from '../write-output.ts';

/**
 * `pourproof compare`: a row for each artwork with every choice of one value for each setting that is given several, as a table, CSV, JSON
 * or a page of small pictures.
 *
 * @returns the exit code: 0 when every row was judged, 2 when some are refused or an artwork cannot be opened, 70 for a fault of ours in one of them
 * @throws errors that `messageOf` knows, for flags, files and outputs
 */
export async function compare(argv: readonly string[], io: Io): Promise<number> {
  const flags = parseFlags(argv, 'repeat');
  refuseStrayOf('compare', flags);
  const request = await compareRequest(flags, io);
  const path = pathFlag(flags, 'report', io);
  const outputs: readonly Output[] = path === null ? [] : [{ flag: 'report', path, endings: ['.html'] }];
  await refuseUnsafeOutputs(outputs, request.inputs, io);
  const names = Object.fromEntries(SETTING_KEYS.map((key) => [key, request.name(key)]));
  const rows: ToldRow[] = [];
  const answers = compareRows(request.comparison, {
    names,
    isPictured: path !== null,
    // one line that is written over, and gone at the end
    ...(io.err.isTerminal
      ? { onProgress: (done, of) => io.err.write(`\r${done} of ${of} rows judged`) }
      : {}),
  });
  for await (const { source, values, outcome } of answers) {
    rows.push({ artwork: request.artworks[source] ?? '', values, outcome });
  }
  if (io.err.isTerminal) {
    io.err.write('\r\u001b[K');
  }
  const { keys, unit, bitPrices, settled } = request;
  const compared: Compared = {
    rows,
    keys,
    unit,
    ...(bitPrices === null ? {} : { bitPrices }),
    ...(settled === null ? {} : { job: settled }),
  };
  for (const output of outputs) {
    const { compareSheetContent } = await import('../outputs/compare-sheet.ts');
    await writeOutput(output, compareSheetContent(compared), io);
  }
  io.out.write(textOf(compared, flags.values, io));
  if (path !== null && !flags.values.has('json') && !flags.values.has('csv')) {
    io.out.write(`Sheet written to ${path}\n`);
  }
  const has = (is: ToldRow['outcome']['is']): boolean => rows.some(({ outcome }) => outcome.is === is);
  return has('fault') ? 70 : has('refused') || request.isShort ? 2 : 0;
}

function textOf(compared: Compared, values: ReadonlyMap<string, unknown>, io: Io): string {
  if (values.has('json')) {
    const summary = compareSummary(compared).map(({ key, values: each, best }) => ({
      setting: key,
      values: each,
      best,
    }));
    return `${JSON.stringify({ schema: 'pourproof/compare@1', rows: compared.rows.map(plainRow), summary }, null, 2)}\n`;
  }
  return values.has('csv')
    ? compareCsv(compared)
    : compareText(compared, { columns: tableColumnsOf(io.out) });
}

/** A row without the shapes of its picture. */
function plainRow({ artwork, values, outcome }: ToldRow): object {
  switch (outcome.is) {
    case 'judged':
      return { artwork, settings: values, ...outcome.figures };
    case 'refused':
      return { artwork, settings: values, refused: outcome.refusal };
    case 'fault':
      return { artwork, settings: values, fault: outcome.what };
  }
}
