import { basename, resolve } from 'node:path';
import {
  type Job,
  type JobInput,
  mergeJobs,
  type SettingKey,
  type SettingName,
  type Shop,
  settleJob,
  typedUnit,
} from '@pourproof/job';
import type { Compared } from '@pourproof/wording';
import type { Source } from 'pourproof';
import type { Comparison } from 'pourproof/many';
import { comparedValues, typedSettings } from './compare-values.ts';
import type { Io } from './io.ts';
import {
  folderOf,
  jobFileAt,
  ownFiles,
  pathFlag,
  placeOf,
  refuseSeveralStdin,
  settingNames,
} from './makers-files.ts';
import { messageOf } from './message-of.ts';
import { openSource, type SourcePath } from './open-source.ts';
import type { ParsedFlags } from './parse-flags.ts';
import { inputName, STDIN } from './read-input.ts';
import { UsageError } from './usage-error.ts';

/** Rows that one comparison may have (our choice: more than anyone reads). */
const MAX_ROWS = 5000;

/** What a command line of `compare` asks for. */
export interface CompareRequest {
  readonly comparison: Comparison;
  /** What each source is called in the table. */
  readonly artworks: readonly string[];
  /** Settings that differ, in the order typed. */
  readonly keys: readonly SettingKey[];
  readonly unit: Compared['unit'];
  /** Of bits in the shop file; `null` where there is none. */
  readonly bitPrices: ReadonlyMap<string, number> | null;
  /** A job of the table, settled; `null` where it cannot be, which its row says. */
  readonly settled: Job | null;
  /** Whether an artwork could not be opened, which was said. */
  readonly isShort: boolean;
  readonly name: SettingName;
  /** Every file that is read: none of them may be written. */
  readonly inputs: readonly string[];
}

/**
 * Reads the flags of `compare` and the files that they name.
 *
 * @throws {UsageError} if something is missing or cannot be read, or there would be too many rows
 * @throws {JobError} if a file of the maker's own cannot be used
 */
export async function compareRequest(flags: ParsedFlags, io: Io): Promise<CompareRequest> {
  refuseSeveralStdin(flags);
  const jobPath = pathFlag(flags, 'job', io);
  const file = jobPath === null ? {} : await jobFileAt(jobPath, io);
  const own = await ownFiles(flags, { io, jobPath });
  const { shop, options } = own;
  const paths = sourcesOf(flags, file, { io, jobPath });
  const values = typedSettings(flags)
    .filter(({ key }) => key !== 'text' && key !== 'font')
    .map((flag) => [flag.key as SettingKey, comparedValues(flag, flags, shop)] as const);
  const fixed = Object.fromEntries(
    values.filter(([, each]) => each.length === 1).map(([key, [value]]) => [key, value]),
  ) as JobInput;
  const varied = values.filter(([, each]) => each.length > 1);
  const count = varied.reduce((product, [, each]) => product * each.length, paths.length);
  if (count > MAX_ROWS) {
    throw new UsageError(
      `that makes ${count} rows; ${MAX_ROWS} are the most.`,
      'Compare fewer values at a time.',
    );
  }
  const job = mergeJobs(file, {
    ...fixed,
    ...own.coupons,
  });
  const { font: _, text: __, artwork: ___, ...base } = job;
  const first = Object.fromEntries(varied.map(([key, [value]]) => [key, value])) as JobInput;
  const opened = await openSources(paths, io);
  return {
    comparison: {
      sources: opened.map(({ source }) => source),
      job: base,
      vary: Object.fromEntries(varied) as Comparison['vary'],
      options,
    },
    artworks: opened.map(({ path }) =>
      artworkName(path, new Set(paths.map(({ fontPath }) => fontPath)).size > 1),
    ),
    keys: varied.map(([key]) => key),
    unit: job.units ?? typedUnit(job, first) ?? shop?.usual.units ?? 'mm',
    bitPrices: shop === null ? null : pricesOf(shop),
    settled: settledFirst(mergeJobs(base, first), opened[0]?.source.kind, options),
    isShort: opened.length < paths.length,
    name: settingNames(flags, { job, isFile: jobPath !== null, shop }),
    inputs: [
      ...paths.flatMap(({ fontPath, ...path }) => [path.kind === 'file' ? path.path : null, fontPath]),
      jobPath,
      ...own.paths,
    ].filter((path): path is string => path !== null && path !== STDIN),
  };
}

/**
 * Opens every source; one that cannot be read is told on the error stream, and the others are compared all the same.
 *
 * @throws {UsageError} where none can be read
 */
async function openSources(
  paths: readonly SourcePath[],
  io: Io,
): Promise<readonly { readonly path: SourcePath; readonly source: Source }[]> {
  const opened: { path: SourcePath; source: Source }[] = [];
  const errors: unknown[] = [];
  for (const path of paths) {
    try {
      opened.push({ path, source: await openSource(path, io) });
    } catch (error) {
      if (messageOf(error) === null) {
        throw error;
      }
      errors.push(error);
    }
  }
  if (opened.length === 0) {
    throw errors[0];
  }
  for (const error of errors) {
    io.err.write(messageOf(error) ?? '');
  }
  return opened;
}

function settledFirst(
  job: JobInput,
  kind: Source['kind'] | undefined,
  options: NonNullable<Comparison['options']>,
): Job | null {
  try {
    return settleJob(job, { ...options, hasFont: true, ...(kind === undefined ? {} : { source: kind }) });
  } catch {
    return null;
  }
}

/** What each bit of a shop costs: nothing where it is at hand. */
function pricesOf({ bits }: Shop): ReadonlyMap<string, number> {
  return new Map(
    bits.flatMap(({ text, price, isToBuy }): readonly (readonly [string, number])[] =>
      !isToBuy ? [[text, 0]] : price === null ? [] : [[text, price]],
    ),
  );
}

/** Files and words in their order, words in every font that is given. */
function sourcesOf(
  flags: ParsedFlags,
  file: JobInput,
  { io, jobPath }: { readonly io: Io; readonly jobPath: string | null },
): readonly SourcePath[] {
  const fonts = (flags.values.get('font') ?? []).map((font) => placeOf(font, io));
  const own =
    fonts.length > 0 || file.font === undefined || jobPath === null
      ? fonts
      : [resolve(folderOf(jobPath, io), file.font)];
  const [font = null] = own;
  const typed = flags.values.get('text') ?? [];
  const isNamed = flags.files.length > 0 || typed.length > 0;
  const texts = isNamed || file.artwork !== undefined || file.text === undefined ? typed : [file.text];
  const drawn = flags.files.map(
    (name): SourcePath => ({
      kind: 'file',
      path: placeOf(name, io),
      name: name === STDIN ? inputName(name) : name,
      fontPath: font,
    }),
  );
  const lettered = texts.flatMap((text) =>
    (own.length === 0 ? [null] : own).map((fontPath): SourcePath => ({ kind: 'lettering', text, fontPath })),
  );
  const sources = [...drawn, ...lettered];
  if (sources.length > 0) {
    return sources;
  }
  if (file.artwork !== undefined && jobPath !== null) {
    const path = resolve(folderOf(jobPath, io), file.artwork);
    return [{ kind: 'file', path, name: basename(file.artwork), fontPath: font }];
  }
  throw new UsageError(
    'there is nothing to compare.',
    'Name drawings or words, as in: pourproof compare sign.svg --depth "2mm or 3mm"',
  );
}

/** What the table calls an artwork; words bear their font only where several are compared. */
function artworkName(path: SourcePath, isFontNamed: boolean): string {
  if (path.kind === 'file') {
    return basename(path.name);
  }
  const words = path.text.replaceAll('\\n', ' ').replaceAll('\n', ' ');
  return path.fontPath === null || !isFontNamed ? `"${words}"` : `"${words}" in ${basename(path.fontPath)}`;
}
