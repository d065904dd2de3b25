import type { TypedJob } from '@pourproof/job';
import type { ArtworkSource } from './artwork-source.ts';
import { keysOnlyFor } from './keys-only-for.ts';

/**
 * The job for other artwork: without the sizes and the ways of reading that were meant for the artwork before, and with the font of the
 * new one. A file of the same name is the same drawing, exported again.
 */
export function jobForSource(job: TypedJob, source: ArtworkSource, before: ArtworkSource | null): TypedJob {
  const isAgain = before?.kind === 'file' && before.name === source.name;
  const ofLettering = keysOnlyFor(({ formats }) => formats?.includes('lettering') === true);
  const ofFiles = keysOnlyFor(({ formats }) => formats?.includes('lettering') === false);
  const dropped: readonly string[] =
    source.kind === 'file'
      ? [...ofLettering, ...(isAgain ? [] : [...ofFiles, 'width']), 'font']
      : [...ofFiles, 'font'];
  const kept = Object.entries(job).filter(([key]) => !dropped.includes(key));
  return { ...Object.fromEntries(kept), ...(source.font === null ? {} : { font: source.font.name }) };
}
