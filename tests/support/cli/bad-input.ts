import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured } from './captured-run.ts';

/** A command line that cannot be used, and the whole of what is said. */
export interface BadInput {
  readonly name: string;
  readonly argv: readonly string[];
  /** `FOLDER` stands for the folder that it is typed in. */
  readonly err: string;
}

/** An SVG of a square. */
export const SQUARE =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M2 2H18V18H2Z"/></svg>';

/** Arguments of `vet`. */
export const vet = (...argv: readonly string[]): readonly string[] => ['vet', ...argv];

/** A message with its remedy, as it is printed. */
export const said = (message: string, remedy: string): string =>
  `pourproof: ${message}\n  What to do: ${remedy}\n`;

/**
 * A folder with `square.svg` in it that is there while the tests of a file run.
 *
 * @param fill adds more to it
 */
export function folderWithSquare(fill: (folder: string) => void = () => {}): () => string {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'pourproof-bad-input-'));
    writeFileSync(join(folder, 'square.svg'), SQUARE);
    fill(folder);
  });
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return () => folder;
}

/** Each case ends with exit code 2 and its message, and prints nothing else. */
export function expectRefusals(what: string, cases: readonly BadInput[], folder: () => string): void {
  describe(`bad ${what} are refused with exit code 2 and one message`, () => {
    test.each(cases)('$name', async ({ argv, err }) => {
      const answer = await captured(argv, { cwd: folder() });
      expect(answer).toEqual({
        code: 2,
        out: '',
        err: err.replaceAll('FOLDER', folder()),
      });
    });
  });
}

/** The same for messages in the words of readers and job, which their own tests hold. */
export function expectOwnWords(
  cases: readonly (readonly [name: string, argv: readonly string[]])[],
  folder: () => string,
): void {
  test.each(cases)('%s is refused with exit code 2, one message and no stack trace', async (_, argv) => {
    const { code, out, err } = await captured(argv, { cwd: folder() });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err.match(/^pourproof: /gmu)).toHaveLength(1);
    expect(err).toMatch(/^pourproof: \S/u);
    expect(err).not.toMatch(/\n {4}at |undefined|\[object/u);
  });
}
