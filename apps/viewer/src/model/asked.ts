import { type ArtworkSource, isSameArtwork } from './artwork-source.ts';
import type { PageState } from './page-state.ts';
import type { Tables } from './shelf.ts';

/** What one proof was asked for, with the tables that it goes by. */
export type Asked = Pick<PageState, 'source' | 'job' | 'shelf'> & {
  readonly source: ArtworkSource;
  readonly tables: Tables;
};

/** Whether two questions have the same answer. */
export function isSameQuestion(a: Omit<Asked, 'tables'>, b: Omit<Asked, 'tables'>): boolean {
  return (
    a.shelf.shop === b.shelf.shop &&
    a.shelf.materials === b.shelf.materials &&
    isSameArtwork(a.source, b.source) &&
    JSON.stringify(a.job) === JSON.stringify(b.job)
  );
}
