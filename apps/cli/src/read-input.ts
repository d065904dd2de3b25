import { basename } from 'node:path';
import type { Io } from './io.ts';
import { UsageError } from './usage-error.ts';

/** Files beyond this are refused unread, in bytes (our choice: far above any artwork, far below what memory holds). */
const LARGEST_BYTES = 512 * 1024 * 1024;

/** What stands for the standard input where a file is named. */
export const STDIN = '-';

/** A file as messages name it. */
export function inputName(path: string): string {
  return path === STDIN ? 'standard input' : basename(path);
}

/**
 * Reads a file that the maker named, or standard input.
 *
 * @param what in words: `artwork`, `font`, `job file`
 * @throws {UsageError} if it does not exist, is a folder, may not be read or is too large, or if the standard
 *   input would have to be typed
 */
export async function readInput(path: string, what: string, io: Io): Promise<Uint8Array> {
  if (path === STDIN && io.isStdinTerminal) {
    throw new UsageError(
      `${what}: - stands for the standard input, but nothing is piped into it.`,
      'Pipe a file into pourproof, as in: cat sign.svg | pourproof vet -',
    );
  }
  let bytes: Uint8Array;
  try {
    bytes = await (path === STDIN ? io.readStdin() : io.readFile(path));
  } catch (error) {
    throw unreadable(path, what, error);
  }
  if (bytes.length > LARGEST_BYTES) {
    throw new UsageError(`${what} ${inputName(path)} is larger than 512 MB.`, 'Split or simplify it first.');
  }
  return bytes;
}

function unreadable(path: string, what: string, error: unknown): unknown {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return new UsageError(`there is no ${what} at ${path}.`, 'Check the path and the spelling.');
    case 'EISDIR':
      return new UsageError(`${path} is a folder.`, 'Name the file inside it.');
    case 'EACCES':
    case 'EPERM':
      return new UsageError(
        `${what} ${path} may not be read.`,
        'Change its permissions, or copy it elsewhere.',
      );
    case 'ERR_FS_FILE_TOO_LARGE':
      return new UsageError(`${what} ${basename(path)} is larger than 2 GB.`, 'Split or simplify it first.');
    default:
      return error;
  }
}
