import { type JobInput, nearestWord, SETTINGS, type SettingKey, settleJob } from '@pourproof/job';
import { remedyText } from '@pourproof/wording';
import { REMEDY_PARTS, type Remedies, type RemedyPart, remedy as sought } from 'pourproof';
import type { Io } from '../io.ts';
import { pathFlag } from '../makers-files.ts';
import { openSource } from '../open-source.ts';
import { oneOf, parseFlags, typedValue } from '../parse-flags.ts';
import { columnsOf } from '../print/look.ts';
import { refuseStrayOf } from '../refuse-stray-flags.ts';
import { type Request, requestFrom } from '../request.ts';
import { UsageError } from '../usage-error.ts';
import { refuseUnsafeOutputs, writeOutput } from '../write-output.ts';

/**
 * `pourproof remedy`: the few best ways to a board without stops, each with what it costs, and the job of the first as a file if asked.
 *
 * @returns the exit code: 0 when there is nothing to clear or a way was found, 1 when nothing clears it
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
  const out = pathFlag(flags, 'write-job', io);
  const outputs = out === null ? [] : [{ flag: 'write-job' as const, path: out, endings: ['.json'] }];
  await refuseUnsafeOutputs(outputs, request.inputs, io);
  const clear = oneOf(flags, 'clear', ['stops', 'cautions']) ?? 'stops';
  const source = await openSource(path, io);
  const { font: _, text: __, artwork: ___, ...job } = request.job;
  const may = typedValue(flags, 'may');
  const found = await sought(source, job, {
    ...request.options,
    clear,
    ...(may === undefined ? {} : { may: partsOf(may) }),
  });
  if (request.isJson) {
    io.out.write(`${JSON.stringify({ schema: 'pourproof/remedy@1', ...found }, null, 2)}\n`);
  } else {
    io.out.write(textOf(found, request, { clear, io, source: path.kind, hasFont: path.fontPath !== null }));
  }
  const [best] = found.remedies;
  for (const output of best === undefined ? [] : outputs) {
    const named = { schema: 'pourproof/job@1', ...sourceOf(request.job), ...best?.job };
    await writeOutput(output, `${JSON.stringify(named, null, 2)}\n`, io);
  }
  return found.nearest === null ? 0 : 1;
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
    const { field, holds } = SETTINGS[key];
    const value: unknown = { ...settled, ...settled.lettering, ...settled.size, ...settled.outlines }[
      field as keyof typeof settled
    ];
    if (key === 'bit') {
      return settled.bits.map((bit) => String(holds.typed([bit] as never))).join(' then ');
    }
    if (value === undefined || value === null) {
      return 'as it is';
    }
    const units = { length: 'mm', angle: 'deg', time: 'h', speed: 'mm/min', temperature: 'C' } as const;
    return `${typeof value === 'number' ? Number(value.toFixed(3)) : String(value)}${holds.quantity === undefined ? '' : units[holds.quantity]}`;
  };
  return remedyText(found, { columns: columnsOf(io.out), unit: settled.units, artwork, clear, usual });
}
