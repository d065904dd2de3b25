import type { Source } from 'pourproof';
import type { Io } from './io.ts';
import { readInput } from './read-input.ts';

/** Where a source lies: a drawing's file, or words and the file of their font. */
export type SourcePath =
  | {
      readonly kind: 'file';
      readonly path: string;
      readonly name: string;
      /** For live text in the drawing. */
      readonly fontPath: string | null;
    }
  | { readonly kind: 'lettering'; readonly text: string; readonly fontPath: string | null };

/**
 * Reads the files of a source.
 *
 * @throws {UsageError} if one of them cannot be read
 */
export async function openSource(source: SourcePath, io: Io): Promise<Source> {
  const font = source.fontPath === null ? null : await readInput(source.fontPath, 'font', io);
  return source.kind === 'file'
    ? { kind: 'file', name: source.name, bytes: await readInput(source.path, 'artwork', io), font }
    : { kind: 'lettering', text: source.text, font };
}
