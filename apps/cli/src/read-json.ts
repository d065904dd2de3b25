import type { Io } from './io.ts';
import { inputName, readInput } from './read-input.ts';
import { UsageError } from './usage-error.ts';

/**
 * Reads a JSON file that the maker named.
 *
 * @param what in words: `job file`
 * @param example where to see how such a file is written
 * @throws {UsageError} when it cannot be read or is not JSON
 */
export async function readJson(path: string, what: string, example: string, io: Io): Promise<unknown> {
  const text = new TextDecoder().decode(await readInput(path, what, io));
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new UsageError(
      `${inputName(path)} is not JSON: ${error instanceof Error ? error.message : String(error)}.`,
      `Write it like ${example}.`,
    );
  }
}
