import { basename, dirname, extname } from 'node:path';
import { OUTPUT_MARK } from '@pourproof/wording';
import type { Io } from './io.ts';
import type { OutlineFlag } from './request.ts';
import { UsageError } from './usage-error.ts';

/** The same of calendars, whose first lines are not ours to choose (PRODID of RFC 5545). */
const CALENDAR_MARK = 'PRODID:pourproof';
/** The mark is looked for in this many bytes at the start of a file. */
const MARK_WITHIN = 512;

/** A file to write: the flag it comes from, its path and what its name has to end in. */
export interface Output {
  readonly flag: 'report' | 'overlay' | 'calendar' | 'placement' | 'customer' | 'write-job' | OutlineFlag;
  readonly path: string;
  readonly endings: readonly string[];
}

/**
 * Refuses, before anything is computed, to overwrite an input, another output, or a file that pourproof did not write.
 *
 * @throws {UsageError} with the remedy
 */
export async function refuseUnsafeOutputs(
  outputs: readonly Output[],
  inputs: readonly string[],
  io: Io,
): Promise<void> {
  const taken = await Promise.all(inputs.map((path) => io.fileIdentity(path)));
  const seen = new Set<string>();
  for (const { flag, path, endings } of outputs) {
    const remedy = `Give --${flag} another name.`;
    if (!endings.includes(extname(path).toLowerCase())) {
      const either = endings.join(' or ');
      throw new UsageError(
        `--${flag} writes a ${either} file, but ${basename(path)} does not end in ${either}.`,
        remedy,
      );
    }
    const identity = await io.fileIdentity(path);
    if (inputs.includes(path) || (identity !== null && taken.includes(identity))) {
      throw new UsageError(
        `--${flag} would write over ${basename(path)}, which is read. Nothing was written.`,
        remedy,
      );
    }
    if (seen.has(path)) {
      throw new UsageError(`two flags write to ${basename(path)}.`, remedy);
    }
    seen.add(path);
    if (identity !== null && !(await isOurs(path, io))) {
      throw new UsageError(
        `--${flag} would write over ${basename(path)}, which pourproof did not make. Nothing was written.`,
        remedy,
      );
    }
  }
}

async function isOurs(path: string, io: Io): Promise<boolean> {
  try {
    const bytes = await io.readFile(path);
    const start = new TextDecoder().decode(bytes.subarray(0, MARK_WITHIN));
    return start.includes(OUTPUT_MARK) || start.includes(CALENDAR_MARK);
  } catch {
    // a folder or a file that may not be read is not ours
    return false;
  }
}

/**
 * Writes one output.
 *
 * @throws {UsageError} if the folder does not exist or may not be written
 */
export async function writeOutput({ flag, path }: Output, text: string, io: Io): Promise<void> {
  try {
    await io.writeFile(path, text);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    switch (code) {
      case 'ENOENT':
      case 'ENOTDIR':
        throw new UsageError(
          `--${flag}: there is no folder ${dirname(path)}.`,
          'Make it first, or name another place.',
        );
      case 'EACCES':
      case 'EPERM':
      case 'EROFS':
        throw new UsageError(`--${flag}: ${path} may not be written.`, 'Name a place that you may write to.');
      case 'ENOSPC':
        throw new UsageError(`--${flag}: the disk is full.`, 'Free some space, then vet again.');
      default:
        throw error;
    }
  }
}
