import type { ArtworkSource } from './artwork-source.ts';
import type { PageState } from './page-state.ts';

/** What one proof was asked for. */
export type Asked = Pick<PageState, 'source' | 'job' | 'materials'> & { readonly source: ArtworkSource };

/** Whether two questions have the same answer. */
export function isSameQuestion(a: Asked, b: Asked): boolean {
  return (
    a.materials === b.materials &&
    isSameArtwork(a.source, b.source) &&
    JSON.stringify(a.job) === JSON.stringify(b.job)
  );
}

function isSameArtwork(a: ArtworkSource, b: ArtworkSource): boolean {
  const isSameContent =
    a.kind === 'file'
      ? b.kind === 'file' && a.bytes === b.bytes
      : b.kind === 'lettering' && a.text === b.text;
  return isSameContent && a.name === b.name && a.font?.bytes === b.font?.bytes;
}
