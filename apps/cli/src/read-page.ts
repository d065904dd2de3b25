import { fileURLToPath } from 'node:url';
import type { Io } from './io.ts';
import { UsageError } from './usage-error.ts';

/**
 * Where the manual's pages stand, from this file and from the bundle, which lies one folder deeper: beside the built code in the published
 * package, at the root in a checkout.
 */
const FOLDERS: readonly string[] = ['../docs/', '../../docs/', '../../../docs/', '../../../../docs/'];

/**
 * A page of the manual as text.
 *
 * @param name relative to docs/, such as `findings/bit-cannot-enter.md`
 * @throws {UsageError} when it is not installed
 */
export async function readPage(name: string, io: Io): Promise<string> {
  for (const folder of FOLDERS) {
    const path = fileURLToPath(new URL(`${folder}${name}`, import.meta.url));
    if ((await io.fileIdentity(path)) !== null) {
      return new TextDecoder().decode(await io.readFile(path));
    }
  }
  throw new UsageError(`the page docs/${name} is not installed.`, 'Install pourproof again.');
}
