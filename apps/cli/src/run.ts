import { nearestWord } from '@pourproof/job';
import type { Vetter } from 'pourproof';
import { faultText } from './fault-text.ts';
import type { Io } from './io.ts';
import { columnsOf } from './print/look.ts';
import { UsageError } from './usage-error.ts';
import { VERSION } from './version.ts';

export type { Io, OutputStream } from './io.ts';
export { nodeIo, surviveClosedPipe } from './node-io.ts';

type Command = (argv: readonly string[], io: Io, vet?: Vetter) => Promise<number>;

/** Each is loaded when it is asked for: what vets is large, and help and lists need none of it. */
const COMMANDS: ReadonlyMap<string, () => Promise<Command>> = new Map([
  ['vet', async () => (await import('./commands/vet.ts')).vet],
  ['compare', async () => (await import('./commands/compare.ts')).compare],
  ['remedy', async () => (await import('./commands/remedy.ts')).remedy],
  ['explain', async () => (await import('./commands/explain.ts')).explain],
  ['list', async () => (await import('./commands/list.ts')).list],
]);

/**
 * Runs one command line.
 *
 * @param argv arguments after the program's name
 * @param vet what vets one source; that of `pourproof` if left out
 * @returns the exit code: 0 clear or done, 1 findings at or above `--fail-on`, 2 input or flags that cannot be read, 70 our fault
 */
export async function run(argv: readonly string[], io: Io, vet?: Vetter): Promise<number> {
  try {
    return await dispatch(argv, io, vet);
  } catch (error) {
    const { messageOf } = await import('./message-of.ts');
    const message = messageOf(error);
    if (message !== null) {
      io.err.write(message);
      return 2;
    }
    io.err.write(faultText(error, io));
    return 70;
  }
}

async function dispatch(argv: readonly string[], io: Io, vet?: Vetter): Promise<number> {
  const [name, ...rest] = argv;
  // what follows a lone -- is a file, whatever it looks like
  const end = argv.indexOf('--');
  const flags = end === -1 ? argv : argv.slice(0, end);
  if (name === undefined || name === 'help' || flags.includes('--help') || flags.includes('-h')) {
    const { helpText } = await import('./help.ts');
    io.out.write(helpText(columnsOf(io.out)));
    return 0;
  }
  if (name === '--version') {
    io.out.write(`pourproof ${VERSION}\n`);
    return 0;
  }
  const command = COMMANDS.get(name);
  if (command !== undefined) {
    return (await command())(rest, io, vet);
  }
  const near = nearestWord(name, [...COMMANDS.keys()]);
  throw new UsageError(
    `there is no command "${name}".`,
    looksLikeFile(name)
      ? `Did you mean: pourproof vet ${name}`
      : `${near === null ? '' : `Did you mean ${near}? `}Commands: ${[...COMMANDS.keys()].join(', ')}. See pourproof --help.`,
  );
}

function looksLikeFile(name: string): boolean {
  return /\.(svgz?|dxf)$/iu.test(name);
}
