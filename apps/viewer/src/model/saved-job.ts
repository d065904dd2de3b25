import type { JobFile } from '@pourproof/job';
import type { ArtworkSource } from './artwork-source.ts';
import { USUAL_CAP_HEIGHT } from './scaled-size.ts';

/** The job file of what is on the page, as the command line reads it from the folder that artwork and font are in. */
export function savedJob(job: Partial<JobFile>, source: ArtworkSource): JobFile {
  const lettering =
    source.kind === 'lettering' && job.width === undefined ? { capHeight: USUAL_CAP_HEIGHT } : {};
  const artwork = source.kind === 'lettering' ? { text: source.text } : { artwork: source.name };
  return { schema: 'pourproof/job@1', ...artwork, ...lettering, ...job };
}
