import type { JobFile, TypedJob } from '@pourproof/job';
import type { ArtworkSource } from './artwork-source.ts';

/** The job file of what is on the page. The command line reads it from the folder that holds artwork and font. */
export function savedJob(job: TypedJob, source: ArtworkSource): JobFile {
  const artwork = source.kind === 'lettering' ? { text: source.text } : { artwork: source.name };
  const { schema: _, ...settings } = job;
  return { schema: 'pourproof/job@1', ...artwork, ...settings };
}
