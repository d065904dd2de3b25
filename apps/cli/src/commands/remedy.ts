import { dirname, relative } from 'node:path';
import {
  type JobInput,
  nearestWord,
  SETTING_KEYS,
  SETTINGS,
  type SettingKey,
  settleJob,
} from '@pourproof/job';
import { remedyText } from '@pourproof/wording';
import {
  artworkFile,
  jobOfWrittenArtwork,
  REMEDY_PARTS,
  type Remedies,
  type RemedyPart,
  type RemedyWatch,
  type Source,
  remedy as sought,
} from 'pourproof';
import type { Io } from '../io.ts';
import { pathFlag } from '../makers-files.ts';
import { openSource } from '../open-source.ts';
import { oneOf, type ParsedFlags, parseFlags, typedValue } from '../parse-flags.ts';
import { columnsOf } from '../print/look.ts';
import { refuseStrayOf } from '../refuse-stray-flags.ts';
import { type Request, requestFrom } from '../request.ts';
import { UsageError } from '../usage-error.ts';
import { type Output, refuseUnsafeOutputs, writeOutput } from '../write-output.ts';

/**
 * `pourproof remedy`: the few best ways to a board without stops, each with what it costs, and one of them as a job file, and its artwork, if
 * asked.
 *
 * @returns the exit code: 0 when there is nothing to clear or a way was found, 1 when none was
 * @throws errors that `messageOf` knows, for flags, job and outputs
 */
export async function remedy(argv: readonly string[], io: Io): Promise<number> {
  const flags = parseFlags(argv);
  refuseStrayOf('remedy', flags);
  const request = await requestFrom(flags, io);
  const [path, second] = request.sources;
  if (path === undefined || second !== undefined) {
    throw new UsageError('remedy takes one artwork at a time.', 'Name one file, or one --text.');
  }
  const outputs = outputsOf(flags, request, io);
  await refuseUnsafeOutputs(outputs, request.inputs, io);
  const clear = oneOf(flags, 'clear', ['stops', 'cautions']) ?? 'stops';
  const way = numberOf(flags, 'way', (n) => Number.isInteger(n) && n >= 1, 'the number of a way, as 2') ?? 1;
  const source = await openSource(path, io);
  const { font: _, text: __, artwork: ___, ...job } = request.job;
  const may = typedValue(flags, 'may');
  const found = await followed(flags, io, (watch) =>
    sought(source, job, {
      ...request.options,
      clear,
      watch,
      ...(may === undefined ? {} : { may: partsOf(may) }),
    }),
  );
  if (request.isJson) {
    io.out.write(`${JSON.stringify({ schema: 'pourproof/remedy@1', ...found }, null, 2)}\n`);
  } else {
    io.out.write(textOf(found, request, { clear, io, source: path.kind, hasFont: path.fontPath !== null }));
  }
  const best = found.remedies[way - 1];
  if (found.remedies.length > 0 && best === undefined) {
    throw new UsageError(
      `there is no way ${way}.`,
      `Ways here are numbered from 1 to ${found.remedies.length}.`,
    );
  }
  if (best !== undefined) {
    await writeWay(best.job, outputs, { request, source, io });
  }
  return found.remedies.length > 0 || (found.nearest === null && found.ended === 'all-tried') ? 0 : 1;
}

function outputsOf(flags: ParsedFlags, { outlinePaths }: Request, io: Io): readonly Output[] {
  const job = pathFlag(flags, 'write-job', io);
  return [
    ...(job === null ? [] : [{ flag: 'write-job' as const, path: job, endings: ['.json'] }]),
    ...outlinePaths.map(({ flag, path }) => ({ flag, path, endings: ['.svg', '.dxf'] })),
  ];
}

/** The job of a way, and its artwork: where both are written, the job names that artwork. */
async function writeWay(
  job: JobInput,
  outputs: readonly Output[],
  { request, source, io }: { readonly request: Request; readonly source: Source; readonly io: Io },
): Promise<void> {
  const artwork = outputs.find(({ flag }) => flag === 'artwork');
  for (const output of outputs) {
    if (output.flag === 'write-job') {
      const named =
        artwork === undefined
          ? { ...sourceOf(request.job), ...job }
          : { artwork: relative(dirname(output.path), artwork.path), ...jobOfWrittenArtwork(job) };
      await writeOutput(output, `${JSON.stringify({ schema: 'pourproof/job@1', ...named }, null, 2)}\n`, io);
    } else {
      const format = output.path.toLowerCase().endsWith('.dxf') ? 'dxf' : 'svg';
      const { text } = await artworkFile(source, job, { ...request.options, format });
      await writeOutput(output, text, io);
    }
  }
}

/** A search that ends in time where that is asked for, or when it is interrupted, and shows on a terminal how far it is. */
async function followed<T>(
  flags: ParsedFlags,
  { err, onInterrupt }: Io,
  search: (watch: RemedyWatch) => Promise<T>,
): Promise<T> {
  const within = numberOf(flags, 'within', (n) => n > 0, 'a number of seconds, as 20');
  const endMs = within === null ? Number.POSITIVE_INFINITY : performance.now() + 1000 * within;
  let isInterrupted = false;
  const forget = onInterrupt?.(() => {
    isInterrupted = true;
  });
  // hears of an interrupt, which is told between two jobs
  const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
  const onTried = ({ tried, found }: { readonly tried: number; readonly found: number }): void =>
    err.write(`\r${tried} jobs tried, ${found} ways found; Ctrl-C ends with these `);
  try {
    return await search({
      isStopped: () => isInterrupted || performance.now() > endMs,
      ...(onInterrupt === undefined ? {} : { pause }),
      ...(err.isTerminal ? { onTried } : {}),
    });
  } finally {
    forget?.();
    if (err.isTerminal) {
      err.write('\r\u001b[K');
    }
  }
}

function numberOf(
  flags: ParsedFlags,
  name: string,
  isGood: (value: number) => boolean,
  form: string,
): number | null {
  const typed = typedValue(flags, name);
  if (typed === undefined) {
    return null;
  }
  const value = Number(typed.replace(/\s*s$/u, ''));
  if (typed.trim() === '' || !isGood(value)) {
    throw new UsageError(`--${name} "${typed}" is not understood.`, `Give ${form}.`);
  }
  return value;
}

/** What a job says of the artwork that it is for. */
function sourceOf({ artwork, text, font }: JobInput): JobInput {
  return {
    ...(artwork === undefined ? {} : { artwork }),
    ...(text === undefined ? {} : { text }),
    ...(font === undefined ? {} : { font }),
  };
}

function partsOf(typed: string): readonly RemedyPart[] {
  return typed.split(',').map((each) => {
    const word = each.trim().toLowerCase();
    const part = REMEDY_PARTS.find((known) => known === word);
    if (part === undefined) {
      const near = nearestWord(word, REMEDY_PARTS);
      throw new UsageError(
        `--may "${each.trim()}" is unknown.`,
        `${near === null ? '' : `Did you mean ${near}? `}Known: ${REMEDY_PARTS.join(', ')}.`,
      );
    }
    return part;
  });
}

/** Settings that leave the drawing as it is where they are not given. */
const OUTLINES: ReadonlySet<SettingKey> = new Set(
  SETTING_KEYS.filter((key) => SETTINGS[key].group === 'outlines'),
);

function textOf(
  found: Remedies,
  { job, options, sources: [source] }: Request,
  {
    clear,
    io,
    source: kind,
    hasFont,
  }: {
    readonly clear: 'stops' | 'cautions';
    readonly io: Io;
    readonly source: 'file' | 'lettering';
    readonly hasFont: boolean;
  },
): string {
  const settled = settleJob(job, { ...options, source: kind, hasFont });
  const artwork = source?.kind === 'file' ? source.name : `"${source?.text ?? ''}"`;
  const usual = (key: SettingKey): string => {
    if (settled.seal === 'none' && (key === 'coats' || key === 'sealHours')) {
      return '';
    }
    const { field, holds } = SETTINGS[key];
    const value: unknown = { ...settled, ...settled.lettering, ...settled.size, ...settled.outlines }[
      field as keyof typeof settled
    ];
    if (key === 'bit') {
      return settled.bits.map((bit) => String(holds.typed([bit] as never))).join(' then ');
    }
    if (value === undefined || value === null || (Array.isArray(value) && value.length === 0)) {
      return OUTLINES.has(key) ? 'as drawn' : 'not said';
    }
    const units = { length: 'mm', angle: 'deg', time: 'h', speed: 'mm/min', temperature: 'C' } as const;
    return `${typeof value === 'number' ? Number(value.toFixed(3)) : String(value)}${holds.quantity === undefined ? '' : units[holds.quantity]}`;
  };
  return remedyText(found, { columns: columnsOf(io.out), unit: settled.units, artwork, clear, usual });
}
