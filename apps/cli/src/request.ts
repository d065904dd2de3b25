import { basename, dirname, resolve } from 'node:path';
import {
  type ArtworkSize,
  artworkSize,
  type FileReading,
  fileReading,
  type Job,
  type JobFile,
  type LetteringSetting,
  letteringSetting,
  readCouponsFile,
  readJobFile,
  readMaterialsFile,
  settleJobWith,
  typedUnit,
} from '@pourproof/job';
import { defaultMaterials, type MaterialsBook } from '@pourproof/materials';
import type { Io } from './io.ts';
import { jobFlags } from './job-flags.ts';
import { oneOf, type ParsedFlags, typedValue } from './parse-flags.ts';
import { readJson } from './read-json.ts';
import { refuseStrayFlags } from './refuse-stray-flags.ts';
import { UsageError } from './usage-error.ts';

/** What is vetted: a file, or words in a font. */
export type Source =
  | { readonly kind: 'file'; readonly path: string; readonly name: string }
  | {
      readonly kind: 'lettering';
      readonly text: string;
      /** `null` for letters of single strokes. */
      readonly fontPath: string | null;
      readonly setting: LetteringSetting;
    };

/** From which level of finding the exit code is 1. */
export type FailOn = 'stop' | 'caution' | 'note' | 'never';

/** A question to vet, all flags and the job file read. */
export interface Request {
  readonly sources: readonly Source[];
  readonly sizing: ArtworkSize;
  readonly reading: FileReading;
  /** The job as typed, to tell what of it has no effect. */
  readonly asked: Partial<JobFile>;
  /** A font for live text in drawings, if one is given. */
  readonly fontPath: string | null;
  readonly job: Job;
  readonly failOn: FailOn;
  readonly isJson: boolean;
  readonly sheetPath: string | null;
  readonly overlayPath: string | null;
  readonly calendarPath: string | null;
  /** Every file that is read: none of them may be written. */
  readonly inputs: readonly string[];
}

/**
 * Reads flags and the job file into a question.
 *
 * @throws {UsageError} when something is missing, contradicts itself or cannot be read
 */
export async function requestFrom(flags: ParsedFlags, io: Io): Promise<Request> {
  const jobPath = pathFlag(flags, 'job', io);
  const file = jobPath === null ? {} : await jobFileAt(jobPath, io);
  const typed = jobFlags(flags);
  const settled = overrideSizes(file, typed);
  const sources = sourcesOf(flags, { file, typed: settled }, { io, jobPath });
  const fontPath = fontPathOf(flags, file, { io, jobPath });
  const unit = settled.units ?? typedUnit(typed) ?? typedUnit(file);
  const overlayPath = pathFlag(flags, 'overlay', io);
  const calendarPath = pathFlag(flags, 'calendar', io);
  refuseForSeveral('overlay', overlayPath, sources);
  refuseForSeveral('calendar', calendarPath, sources);
  const materialsPath = await materialsPathOf(flags, { io, jobPath });
  const materials = materialsPath === null ? defaultMaterials : await materialsAt(materialsPath, io);
  const couponsPath = pathFlag(flags, 'coupons', io);
  const coupons = couponsPath === null ? {} : { coupons: await couponsAt(couponsPath, io) };
  const job = settleJobWith(materials, settled, coupons, unit === undefined ? {} : { units: unit });
  if (calendarPath !== null && job.start === null) {
    throw new UsageError(
      '--calendar needs the day and time when carving starts.',
      'Add --start "2026-12-01 09:00" with yours.',
    );
  }
  return {
    sources,
    sizing: artworkSize(settled),
    reading: fileReading(settled),
    asked: settled,
    fontPath,
    job,
    failOn: failOnOf(flags),
    isJson: flags.values.has('json'),
    sheetPath: pathFlag(flags, 'report', io),
    overlayPath,
    calendarPath,
    inputs: [
      ...[
        ...sources.map((source) => (source.kind === 'file' ? source.path : source.fontPath)),
        fontPath,
        jobPath,
        materialsPath,
        couponsPath,
      ].filter((path) => path !== null),
    ],
  };
}

function pathFlag(flags: ParsedFlags, name: string, io: Io): string | null {
  const value = typedValue(flags, name);
  return value === undefined ? null : resolve(io.cwd, value);
}

async function jobFileAt(path: string, io: Io): Promise<JobFile> {
  const example = 'fixtures/jobs/sign.json; the schema is in docs/schema/job@1.json';
  return readJobFile(await readJson(path, 'job file', example, io), basename(path));
}

/** The file of the maker's own materials: the one named, else `materials.json` beside the job file, if there is one. */
async function materialsPathOf(flags: ParsedFlags, { io, jobPath }: Place): Promise<string | null> {
  const named = pathFlag(flags, 'materials', io);
  if (named !== null || jobPath === null) {
    return named;
  }
  const beside = resolve(dirname(jobPath), 'materials.json');
  return (await io.fileIdentity(beside)) === null ? null : beside;
}

async function materialsAt(path: string, io: Io): Promise<MaterialsBook> {
  const example = 'docs/schema/materials@1.json says';
  return readMaterialsFile(await readJson(path, 'materials file', example, io), basename(path));
}

async function couponsAt(path: string, io: Io): Promise<NonNullable<JobFile['coupons']>> {
  const example = 'docs/schema/coupons@1.json says';
  return readCouponsFile(await readJson(path, 'coupons file', example, io), basename(path));
}

/** Overlay and calendar are of one artwork. */
function refuseForSeveral(name: string, path: string | null, sources: readonly Source[]): void {
  if (path !== null && sources.length > 1) {
    throw new UsageError(
      `--${name} can show one file, but ${sources.length} are given.`,
      `Vet the files one at a time, each with its own --${name}.`,
    );
  }
}

/** A size typed as a flag replaces whichever size the job file asks for. */
function overrideSizes(file: Partial<JobFile>, typed: Partial<JobFile>): Partial<JobFile> {
  const sizes = ['width', 'height', 'scale'] as const;
  const merged = { ...file, ...typed };
  if (sizes.some((key) => typed[key] !== undefined)) {
    for (const key of sizes.filter((each) => typed[each] === undefined)) {
      delete merged[key];
    }
  }
  return merged;
}

interface Place {
  readonly io: Io;
  readonly jobPath: string | null;
}

function sourcesOf(
  flags: ParsedFlags,
  parts: { readonly file: Partial<JobFile>; readonly typed: Partial<JobFile> },
  { io, jobPath }: Place,
): readonly Source[] {
  const typedText = typedValue(flags, 'text');
  if (typedText !== undefined && flags.files.length > 0) {
    throw new UsageError(
      `both --text and ${flags.files.join(', ')} are given.`,
      'Vet the file or the lettering, one at a time.',
    );
  }
  if (flags.files.length > 0) {
    refuseStrayFlags(flags, 'file');
    return flags.files.map((name) => ({ kind: 'file', path: resolve(io.cwd, name), name }));
  }
  const text = typedText ?? (parts.file.artwork === undefined ? parts.file.text : undefined);
  if (text !== undefined) {
    refuseStrayFlags(flags, 'lettering');
    const fontPath = fontPathOf(flags, parts.file, { io, jobPath });
    return [letteringFrom(text, fontPath, letteringSetting(parts.typed))];
  }
  if (parts.file.artwork !== undefined && jobPath !== null) {
    refuseStrayFlags(flags, 'file');
    return [
      {
        kind: 'file',
        path: resolve(dirname(jobPath), parts.file.artwork),
        name: basename(parts.file.artwork),
      },
    ];
  }
  throw new UsageError(
    'there is nothing to vet.',
    'Name an SVG or DXF file, as in: pourproof vet sign.svg --bit flat:1/8in',
  );
}

function letteringFrom(text: string, fontPath: string | null, setting: LetteringSetting): Source {
  if (text.trim() === '') {
    throw new UsageError('--text is empty.', 'Type the words to carve between quotes.');
  }
  if (fontPath === null && !setting.isSingleLine) {
    throw new UsageError(
      '--text needs a font.',
      'Add --font FILE with the font that will be carved, and --cap-height 15mm.',
    );
  }
  if (setting.isSingleLine && (fontPath !== null || setting.axes !== undefined)) {
    throw new UsageError(
      '--single-line has letters of its own, but a font or an axis is given too.',
      'Give --single-line or --font, one of them.',
    );
  }
  return { kind: 'lettering', text, fontPath, setting };
}

function fontPathOf(flags: ParsedFlags, file: Partial<JobFile>, { io, jobPath }: Place): string | null {
  const typed = pathFlag(flags, 'font', io);
  if (typed !== null || file.font === undefined || jobPath === null) {
    return typed;
  }
  return resolve(dirname(jobPath), file.font);
}

function failOnOf(flags: ParsedFlags): FailOn {
  return oneOf(flags, 'fail-on', ['stop', 'caution', 'note', 'never']) ?? 'stop';
}
