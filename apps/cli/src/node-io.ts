import { mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import type { Io, OutputStream } from './io.ts';

/** The terminal, files and environment of this process. */
export function nodeIo(): Io {
  return {
    out: streamOf(process.stdout),
    err: streamOf(process.stderr),
    readStdin,
    isStdinTerminal: process.stdin.isTTY === true,
    readFile: (path) => readFile(path),
    writeFile: (path, text) => writeFile(path, text, 'utf8'),
    makeFolder: async (path) => {
      await mkdir(path, { recursive: true });
    },
    fileIdentity,
    onInterrupt: (stop) => {
      process.once('SIGINT', stop);
      return () => process.removeListener('SIGINT', stop);
    },
    cwd: process.cwd(),
    env: process.env,
  };
}

/** Ends in silence when the reader of our output goes away, as in `pourproof … | head`. */
export function surviveClosedPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') {
      throw error;
    }
  });
}

function streamOf(stream: NodeJS.WriteStream): OutputStream {
  return {
    write: (text) => {
      stream.write(text);
    },
    isTerminal: stream.isTTY === true,
    columns: stream.isTTY === true ? stream.columns : undefined,
  };
}

async function readStdin(): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of process.stdin) {
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}

async function fileIdentity(path: string): Promise<string | null> {
  try {
    const { dev, ino } = await stat(path, { bigint: true });
    return `${dev}:${ino}`;
  } catch (error) {
    if (error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR')) {
      return null;
    }
    throw error;
  }
}
