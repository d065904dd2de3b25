import { basename, resolve } from 'node:path';
import type { SettingName } from '@pourproof/job';
import { type JobInput, mergeJobs, refusalOf, refusalText, settleJob, type VetOptions } from 'pourproof';
import type { Io } from './io.ts';
import { jobFlags } from './job-flags.ts';
import {
  folderOf,
  jobFileAt,
  ownFiles,
  type Place,
  pathFlag,
  placeOf,
  refuseSeveralStdin,
  settingNames,
} from './makers-files.ts';
import type { SourcePath } from './open-source.ts';
import { oneOf, type ParsedFlags, typedValue } from './parse-flags.ts';
import { inputName, STDIN } from './read-input.ts';
import { readTexts } from './read-texts.ts';
import { refuseStrayFlags } from './refuse-stray-flags.ts';
import { UsageError } from './usage-error.ts';

/** The least severity that makes the exit code 1. */
export type FailOn = 'stop' | 'caution' | 'note' | 'never';

/** Flags that write outlines. */
export type OutlineFlag = 'artwork' | 'cut-outline' | 'left-over';

const OUTLINE_FLAGS: readonly OutlineFlag[] = ['artwork', 'cut-outline', 'left-over'];

/** What a command line asks for, with the job file read. */
export interface Request {
  readonly sources: readonly SourcePath[];
  /** What the job file and the flags say. */
  readonly job: JobInput;
  /** Shop, materials and coupons of the maker's own. */
  readonly options: VetOptions;
  readonly failOn: FailOn;
  readonly isJson: boolean;
  /** Whether several may be vetted, so that JSON is an array. */
  readonly isSeveral: boolean;
  /** Whether all is printed, or what fits one screen. */
  readonly isFull: boolean;
  readonly sheetPath: string | null;
  readonly overlayPath: string | null;
  readonly calendarPath: string | null;
  readonly placementPath: string | null;
  readonly customerPath: string | null;
  /** Paper that is asked for; `null` for the usual one. */
  readonly paper: 'a4' | 'letter' | null;
  /** Files of artwork, of its cut, of what that leaves. */
  readonly outlinePaths: readonly { readonly flag: OutlineFlag; readonly path: string }[];
  /** What settings are called in messages: flags, but the keys of a job file for what stands there. */
  readonly name: SettingName;
  /** Every file that is read: none of them may be written. */
  readonly inputs: readonly string[];
}

/**
 * Reads the flags and the job file.
 *
 * @throws {UsageError} if something is missing or cannot be read, or flags contradict each other
 * @throws {JobError} if the job cannot be settled
 */
export async function requestFrom(flags: ParsedFlags, io: Io): Promise<Request> {
  refuseSeveralStdin(flags);
  const jobPath = pathFlag(flags, 'job', io);
  const file = jobPath === null ? {} : await jobFileAt(jobPath, io);
  const textsPath = pathFlag(flags, 'texts', io);
  const texts = textsPath === null ? null : await textsAt(textsPath, flags, io);
  const sources = sourcesOf(flags, file, { io, jobPath, texts });
  const outputs = outputsOfOne(flags, sources, io);
  const own = await ownFiles(flags, { io, jobPath });
  const { shop, options } = own;
  const [first] = flags.files;
  const job = mergeJobs(file, {
    ...jobFlags(flags),
    ...(first === undefined ? {} : { artwork: first }),
    ...(texts === null ? {} : { text: texts[0] }),
    ...own.coupons,
  });
  const [source] = sources;
  const name = settingNames(flags, { job, isFile: jobPath !== null, shop });
  const { start } = inWords(name, () =>
    settleJob(job, {
      ...options,
      source: source?.kind,
      hasFont: (source?.fontPath ?? null) !== null,
    }),
  );
  if (outputs.calendarPath !== null && start === null) {
    throw new UsageError(
      '--calendar needs the day and time when carving starts.',
      'Add --start "2026-12-01 09:00" with yours.',
    );
  }
  const read = sources.flatMap(({ fontPath, ...source }) => [
    source.kind === 'file' ? source.path : null,
    fontPath,
  ]);
  return {
    sources,
    job,
    options,
    failOn: oneOf(flags, 'fail-on', ['stop', 'caution', 'note', 'never']) ?? 'stop',
    isJson: flags.values.has('json'),
    isSeveral: texts !== null || sources.length > 1,
    isFull: flags.values.has('full'),
    sheetPath: pathFlag(flags, 'report', io),
    ...outputs,
    paper: oneOf<'a4' | 'letter'>(flags, 'paper', ['a4', 'letter']) ?? null,
    name,
    inputs: [...read, textsPath, jobPath, ...own.paths].filter(
      (path): path is string => path !== null && path !== STDIN,
    ),
  };
}

/** Where outputs go that are of one artwork each. */
function outputsOfOne(
  flags: ParsedFlags,
  sources: readonly SourcePath[],
  io: Io,
): Pick<Request, 'overlayPath' | 'calendarPath' | 'placementPath' | 'customerPath' | 'outlinePaths'> {
  const pathOf = (flag: string): string | null => {
    const path = pathFlag(flags, flag, io);
    refuseForSeveral(flag, path, sources);
    return path;
  };
  return {
    overlayPath: pathOf('overlay'),
    calendarPath: pathOf('calendar'),
    placementPath: pathOf('placement'),
    customerPath: pathOf('customer'),
    outlinePaths: OUTLINE_FLAGS.flatMap((flag) => {
      const path = pathOf(flag);
      return path === null ? [] : [{ flag, path }];
    }),
  };
}

/** What a job is refused for, in the words of its maker. */
function inWords<Result>(name: SettingName, settle: () => Result): Result {
  try {
    return settle();
  } catch (error) {
    const refusal = refusalOf(error, undefined, name);
    if (refusal === null) {
      throw error;
    }
    throw new UsageError(refusalText({ ...refusal, remedy: '' }), refusal.remedy);
  }
}

/** Overlay, calendar, sheets in real size and outlines are of one artwork. */
function refuseForSeveral(name: string, path: string | null, sources: readonly SourcePath[]): void {
  if (path !== null && sources.length > 1) {
    throw new UsageError(
      `--${name} can show one artwork, but ${sources.length} are given.`,
      `Vet them one at a time, each with its own --${name}.`,
    );
  }
}

/** The texts of a list, where nothing else is named to vet. */
async function textsAt(path: string, flags: ParsedFlags, io: Io): Promise<readonly [string, ...string[]]> {
  const others = [...flags.files, ...(flags.values.has('text') ? ['--text'] : [])];
  if (others.length > 0) {
    throw new UsageError(
      `both --texts and ${others.join(', ')} are given.`,
      'Vet the list, the files or the lettering, one at a time.',
    );
  }
  refuseStrayFlags(flags, 'lettering');
  return readTexts(path, io);
}

function sourcesOf(
  flags: ParsedFlags,
  file: JobInput,
  { io, jobPath, texts }: Place & { readonly texts: readonly string[] | null },
): readonly SourcePath[] {
  const fontPath = fontPathOf(flags, file, { io, jobPath });
  if (texts !== null) {
    return texts.map((text) => ({ kind: 'lettering', text, fontPath }));
  }
  const typedText = typedValue(flags, 'text');
  if (typedText !== undefined && flags.files.length > 0) {
    throw new UsageError(
      `both --text and ${flags.files.join(', ')} are given.`,
      'Vet the file or the lettering, one at a time.',
    );
  }
  if (flags.files.length > 0) {
    refuseStrayFlags(flags, 'file');
    return flags.files.map((name) => ({
      kind: 'file',
      path: placeOf(name, io),
      name: name === STDIN ? inputName(name) : name,
      fontPath,
    }));
  }
  const text = typedText ?? (file.artwork === undefined ? file.text : undefined);
  if (text !== undefined) {
    refuseStrayFlags(flags, 'lettering');
    return [{ kind: 'lettering', text, fontPath }];
  }
  if (file.artwork !== undefined && jobPath !== null) {
    refuseStrayFlags(flags, 'file');
    const path = resolve(folderOf(jobPath, io), file.artwork);
    return [{ kind: 'file', path, name: basename(file.artwork), fontPath }];
  }
  throw new UsageError(
    'there is nothing to vet.',
    'Name an SVG or DXF file, as in: pourproof vet sign.svg --bit flat:1/8in',
  );
}

function fontPathOf(flags: ParsedFlags, file: JobInput, { io, jobPath }: Place): string | null {
  const typed = pathFlag(flags, 'font', io);
  if (typed !== null || file.font === undefined || jobPath === null) {
    return typed;
  }
  return resolve(folderOf(jobPath, io), file.font);
}
