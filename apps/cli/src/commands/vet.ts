import { dirname } from 'node:path';
import { reportText, screenText } from '@pourproof/wording';
import { ProofFault, type Report, type Source, type Vetted, type Vetter, vet as vetSource } from 'pourproof';
import type { Io } from '../io.ts';
import { kept } from '../kept-fault.ts';
import { messageOf } from '../message-of.ts';
import { openSource, type SourcePath } from '../open-source.ts';
import { parseFlags } from '../parse-flags.ts';
import { columnsOf, isColoured } from '../print/look.ts';
import { painted } from '../print/paint.ts';
import { refuseStrayOf } from '../refuse-stray-flags.ts';
import { type FailOn, type Request, requestFrom } from '../request.ts';
import { type Output, refuseUnsafeOutputs, writeOutput } from '../write-output.ts';

/** Fewer are vetted one after the other: a thread takes as long to start as one or two proofs. */
const LEAST_FOR_THREADS = 4;

/** An output of vet. */
type VetOutput = Output & { readonly flag: Exclude<Output['flag'], 'write-job'> };

const OUTPUT_NAMES: Readonly<Record<VetOutput['flag'], string>> = {
  report: 'Sheet',
  overlay: 'Overlay',
  calendar: 'Calendar',
  placement: 'Sheets in real size',
  customer: 'Sheets for the customer',
  artwork: 'Artwork',
  'cut-outline': 'Outline of the cut',
  'left-over': 'What is left over',
};

/**
 * `pourproof vet`: vets one or more artworks and prints text or JSON, with a sheet, an overlay and a calendar if asked.
 *
 * What is wrong with one source is told on the error stream in its turn; the others are vetted all the same.
 *
 * @param vetOne what vets one source; if left out that of `pourproof`, which vets several on all cores
 * @returns the exit code: 0 clear, 1 findings at or above the level asked for, 2 something could not be read, 70 a fault of ours among several
 * @throws errors that {@link messageOf} knows, for flags, job and outputs; a fault of ours where one source is vetted
 */
export async function vet(argv: readonly string[], io: Io, vetOne?: Vetter): Promise<number> {
  const flags = parseFlags(argv);
  refuseStrayOf('vet', flags);
  const request = await requestFrom(flags, io);
  const outputs = outputsOf(request);
  await refuseUnsafeOutputs(outputs, request.inputs, io);
  const vetted: Vetted[] = [];
  let worst = 0;
  for await (const answer of answersTo(request, outputs, io, vetOne)) {
    if (typeof answer === 'number') {
      worst = Math.max(worst, answer);
    } else {
      vetted.push(answer);
      worst = Math.max(worst, exitCode(answer.report, request.failOn));
    }
  }
  await print(vetted, request, outputs, io);
  return worst;
}

/** What came of each source in its order: what was vetted, or the exit code of what was told instead. */
async function* answersTo(
  request: Request,
  outputs: readonly VetOutput[],
  io: Io,
  vetOne: Vetter | undefined,
): AsyncGenerator<Vetted | number> {
  if (vetOne === undefined && request.sources.length >= LEAST_FOR_THREADS) {
    const { vettedByThreads } = await import('../vet-by-threads.ts');
    yield* vettedByThreads(request, folderBeside(outputs, io), io);
    return;
  }
  for (const source of request.sources) {
    yield await vettedOrTold(source, request, outputs, { io, vetOne: vetOne ?? vetSource });
  }
}

/** Where a fault of ours is kept: beside what is written, else where the command is typed. */
function folderBeside([first]: readonly VetOutput[], io: Io): string {
  return first === undefined ? io.cwd : dirname(first.path);
}

function outputsOf({
  sheetPath,
  overlayPath,
  calendarPath,
  placementPath,
  customerPath,
  outlinePaths,
}: Request): readonly VetOutput[] {
  return [
    ...(sheetPath === null ? [] : [{ flag: 'report', path: sheetPath, endings: ['.html'] } as const]),
    ...(overlayPath === null ? [] : [{ flag: 'overlay', path: overlayPath, endings: ['.svg'] } as const]),
    ...(calendarPath === null ? [] : [{ flag: 'calendar', path: calendarPath, endings: ['.ics'] } as const]),
    ...(placementPath === null
      ? []
      : [{ flag: 'placement', path: placementPath, endings: ['.html'] } as const]),
    ...(customerPath === null ? [] : [{ flag: 'customer', path: customerPath, endings: ['.html'] } as const]),
    ...outlinePaths.map((each) => ({ ...each, endings: ['.svg', '.dxf'] })),
  ];
}

/** Vets one source; 2 if it was refused, with the reason printed. A fault of ours is kept beside the outputs. */
async function vettedOrTold(
  path: SourcePath,
  request: Request,
  outputs: readonly VetOutput[],
  { io, vetOne }: { readonly io: Io; readonly vetOne: Vetter },
): Promise<Vetted | 2> {
  let source: Source | undefined;
  try {
    source = await openSource(path, io);
    return await vetOne(source, request.job, request.options);
  } catch (error) {
    const message = messageOf(error, { source, name: request.name });
    if (message === null) {
      throw error instanceof ProofFault ? await kept(error, folderBeside(outputs, io), io) : error;
    }
    io.err.write(message);
    return 2;
  }
}

async function print(
  vetted: readonly Vetted[],
  request: Request,
  outputs: readonly VetOutput[],
  io: Io,
): Promise<void> {
  const [first, ...more] = vetted;
  if (first === undefined) {
    return;
  }
  const notes: string[] = [];
  for (const output of outputs) {
    const { text, note = '' } = await contentOf(output, [first, ...more], request, io);
    await writeOutput(output, text, io);
    notes.push(`${OUTPUT_NAMES[output.flag]} written to ${output.path}${note}\n`);
  }
  if (request.isJson) {
    const { reportJson } = await import('../print/json.ts');
    io.out.write(
      reportJson(
        vetted.map(({ report }) => report),
        request.isSeveral,
      ),
    );
    return;
  }
  const columns = columnsOf(io.out);
  const look = { columns, ...(isColoured(io) ? { mark: painted } : {}) };
  const textOf = request.isFull ? reportText : screenText;
  io.out.write(vetted.map((each) => textOf(each, look)).join(`\n${'─'.repeat(columns)}\n\n`));
  io.out.write(notes.join(''));
}

/** What writes an output is loaded when that is asked for. */
async function contentOf(
  { flag, path }: VetOutput,
  vetted: readonly [Vetted, ...Vetted[]],
  request: Request,
  io: Io,
): Promise<{ readonly text: string; readonly note?: string }> {
  switch (flag) {
    case 'report':
      return { text: (await import('../outputs/sheet.ts')).sheetContent(vetted) };
    case 'overlay':
      return { text: (await import('../outputs/overlay.ts')).overlayContent(vetted) };
    case 'placement':
      return { text: (await import('../outputs/placement.ts')).placementContent(vetted, request) };
    case 'customer':
      return { text: (await import('../outputs/customer.ts')).customerContent(vetted, request) };
    case 'calendar':
      return { text: await (await import('../outputs/calendar.ts')).calendarContent(vetted) };
    default:
      return (await import('../outputs/outlines.ts')).outlinesContent({ flag, path }, request, io);
  }
}

function exitCode(report: Report, failOn: FailOn): 0 | 1 {
  const levels: Readonly<Record<FailOn, readonly string[]>> = {
    stop: ['stop'],
    caution: ['stop', 'caution'],
    note: ['stop', 'caution', 'note'],
    never: [],
  };
  // the verdict also counts cautions from reading the artwork
  const open = report.findings.filter(({ seenTo }) => seenTo !== true);
  const graver = [report.verdict, ...open.map(({ severity }) => severity)];
  return graver.some((severity) => levels[failOn].includes(severity)) ? 1 : 0;
}
