import { JobError, readCouponsFile, readJobFile, type TypedJob, typedJob } from '@pourproof/job';
import type { NamedBytes } from './artwork-source.ts';
import type { NamedData, Shelf } from './shelf.ts';
import { shippedFontFile, shippedFonts } from './shipped-fonts.ts';

/** Files that were opened together, by kind. */
export interface OpenedFiles {
  readonly names: readonly string[];
  readonly artwork: NamedBytes | null;
  readonly font: NamedBytes | null;
  readonly job: TypedJob | null;
  readonly coupons: Shelf['coupons'];
  readonly shop: NamedData | null;
  readonly materials: NamedData | null;
  /** The font that the job names, where it comes with the page. */
  readonly shippedFont: NamedBytes | null;
}

/** A file as a browser hands it over. */
export type ChosenFile = Pick<File, 'name' | 'arrayBuffer'>;

/**
 * Reads files that were dropped or chosen together: a drawing, a font, a job, a shop, coupons, materials. Shop and materials stay as they are
 * written; they are read where they are put to use.
 *
 * @throws {JobError} if two are of one kind, or a JSON file cannot be used
 */
export async function openedFiles(files: readonly ChosenFile[]): Promise<OpenedFiles> {
  const read: { -readonly [Key in keyof OpenedFiles]: OpenedFiles[Key] } = {
    names: files.map(({ name }) => name),
    artwork: null,
    font: null,
    job: null,
    coupons: null,
    shop: null,
    materials: null,
    shippedFont: null,
  };
  for (const file of files) {
    const { name } = file;
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (/\.json$/iu.test(name)) {
      Object.assign(read, jsonPart(read, name, bytes));
    } else if (/\.(?:ttf|otf|ttc|woff2?)$/iu.test(name)) {
      read.font = single(read.font, { name, bytes }, 'fonts');
    } else {
      read.artwork = single(read.artwork, { name, bytes }, 'drawings');
    }
  }
  const named = read.job?.font?.replace(/^.*[/\\]/u, '');
  const shipped = read.font === null ? shippedFonts.find(({ file }) => file === named) : undefined;
  return shipped === undefined ? read : { ...read, shippedFont: await shippedFontFile(shipped) };
}

function jsonPart(read: OpenedFiles, name: string, bytes: Uint8Array): Partial<OpenedFiles> {
  const data = parsed(name, bytes);
  const schema = typeof data === 'object' && data !== null && 'schema' in data ? data.schema : undefined;
  switch (schema) {
    case 'pourproof/job@1':
      return { job: single(read.job, typedJob(readJobFile(data, name)), 'job files') };
    case 'pourproof/coupons@1':
      return { coupons: single(read.coupons, readCouponsFile(data, name), 'coupons files') };
    case 'pourproof/shop@1':
      return { shop: single(read.shop, { name, data }, 'shop files') };
    case 'pourproof/materials@1':
      return { materials: single(read.materials, { name, data }, 'materials files') };
    default:
      throw new JobError('unknown-file', null, { file: name });
  }
}

function parsed(name: string, bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch (error) {
    throw new JobError('not-json', null, {
      file: name,
      reason: error instanceof Error ? error.message : String(error),
    });
  }
}

function single<T>(before: T | null, now: T, kind: string): T {
  if (before !== null) {
    throw new JobError('two-files', null, { kind });
  }
  return now;
}
