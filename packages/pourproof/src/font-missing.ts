import { ArtworkError } from '@pourproof/artwork/format';

/** The error for a job that names a font when none came with its file. */
export function fontMissing(): ArtworkError {
  return new ArtworkError('font-missing', {}, () => ({
    what: 'The job names a font, but none is given.',
    remedy: 'Give the font file too, or take it out of the job.',
  }));
}
