import type { ArtworkSource, NamedBytes } from './artwork-source.ts';
import type { ShelfPart } from './page-acts.ts';
import type { PageState } from './page-state.ts';
import { savedJob } from './saved-job.ts';
import type { Shelf } from './shelf.ts';
import type { ShownProof } from './shown-proof.ts';

/** A file as it is saved. */
export interface SavedFile {
  readonly name: string;
  readonly type: string;
  readonly content: string | Uint8Array;
}

/** The report of a proof, as the command line writes it. */
export function reportFile({ report, source }: Pick<ShownProof, 'report' | 'source'>): SavedFile {
  return json(`${fileStem(source.name)}.proof.json`, report);
}

/** The job of a proof, as the command line takes it. */
export function jobFile({ job, source }: Pick<ShownProof, 'job' | 'source'>): SavedFile {
  return json(`${fileStem(source.name)}.job.json`, savedJob(job, source));
}

/** What else a job file needs beside it: the drawing and the font, as they were opened. */
export function filesBeside({ source }: Pick<ShownProof, 'source'>): readonly SavedFile[] {
  return [drawingOf(source), source.font].filter((file) => file !== null).map(bytesFile);
}

/** A file of the shelf, as it was opened; of coupons, those that the job has. `null` for one that is not there. */
export function shelfFile(
  { shelf, job }: Pick<PageState, 'shelf' | 'job'>,
  what: ShelfPart,
): SavedFile | null {
  if (what === 'coupons') {
    const coupons: Shelf['coupons'] | undefined = job.coupons ?? shelf.coupons;
    return coupons === null || coupons === undefined
      ? null
      : json('coupons.json', { schema: 'pourproof/coupons@1', coupons });
  }
  const file = shelf[what];
  return file === null ? null : json(file.name, file.data);
}

/** A name of artwork as the start of a file's name. */
export function fileStem(name: string): string {
  return name.replace(/\.[^.]*$/u, '').replaceAll(/[^\p{L}\p{M}\p{N}-]+/gu, '-');
}

function drawingOf(source: ArtworkSource): NamedBytes | null {
  return source.kind === 'file' ? source : null;
}

function bytesFile({ name, bytes }: NamedBytes): SavedFile {
  return { name, type: 'application/octet-stream', content: bytes };
}

function json(name: string, data: unknown): SavedFile {
  return { name, type: 'application/json', content: `${JSON.stringify(data, null, 2)}\n` };
}
