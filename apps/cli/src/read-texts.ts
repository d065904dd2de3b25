import type { Io } from './io.ts';
import { inputName, readInput } from './read-input.ts';
import { UsageError } from './usage-error.ts';

/**
 * Reads a list of texts, one a line; lines without anything in them are passed over.
 *
 * @throws {UsageError} when it cannot be read, is not UTF-8, or holds no text
 */
export async function readTexts(path: string, io: Io): Promise<readonly [string, ...string[]]> {
  const bytes = await readInput(path, 'list of texts', io);
  let list: string;
  try {
    list = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new UsageError(
      `the list of texts, ${inputName(path)}, is not UTF-8.`,
      'Save it as plain text in UTF-8, one text a line.',
    );
  }
  const [first, ...more] = list
    .split(/\r\n|\r|\n/u)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (first === undefined) {
    throw new UsageError(`there is no text in ${inputName(path)}.`, 'Write one text a line.');
  }
  return [first, ...more];
}
