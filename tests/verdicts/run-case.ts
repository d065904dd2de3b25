import { nodeIo } from '@pourproof/cli';
import { type Captured, captured, ROOT } from '../support/cli/captured-run.ts';
import { caseArtwork } from './artwork.ts';
import type { VerdictCase } from './read-cases.ts';

/** The name under which the drawing of a case is read; every other file is a real one. */
const NAME = 'case.svg';

/** Runs `vet` for a case as it would be typed. */
export async function runCase(
  { artwork, flags }: VerdictCase,
  more: readonly string[] = [],
): Promise<Captured> {
  const drawn = caseArtwork(artwork);
  if (drawn.kind === 'flags') {
    return captured(['vet', ...drawn.flags, ...flags, ...more], { cwd: ROOT });
  }
  const { readFile } = nodeIo();
  return captured(['vet', NAME, ...flags, ...more], {
    cwd: ROOT,
    readFile: async (path) => (path.endsWith(NAME) ? new TextEncoder().encode(drawn.svg) : readFile(path)),
  });
}
