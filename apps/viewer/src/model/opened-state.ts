import { settleJob, type TypedJob } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import { type ArtworkSource, letteringSource, type NamedBytes } from './artwork-source.ts';
import { fetchBytes } from './demo-order.ts';
import { jobForSource } from './job-for-source.ts';
import type { OpenedFiles } from './opened-files.ts';
import { shippedFonts } from './shipped-fonts.ts';

/** What opening files can change on the page. */
export interface PageState {
  readonly source: ArtworkSource | null;
  readonly job: TypedJob;
  readonly materials: MaterialsBook;
  /** Name of the file of materials; `''` for those that ship with pourproof. */
  readonly materialsName: string;
  /** The maker's own font, if one was opened. */
  readonly font: NamedBytes | null;
  /** Words of a job that wait for their font; `''` for none. */
  readonly waitingText: string;
  /** What is still needed; `''` for nothing. */
  readonly note: string;
}

/**
 * The state of the page after files were opened. Files that a job names and that were not given are asked for.
 *
 * @throws {JobError} if the resulting job cannot be vetted
 */
export async function openedState(before: PageState, files: OpenedFiles): Promise<PageState> {
  const materials = files.materials?.book ?? before.materials;
  const font = files.font ?? before.font;
  const job = {
    ...(files.job === null ? before.job : ticketOf(files.job, before.job)),
    ...(files.coupons === null ? {} : { coupons: files.coupons }),
  };
  settleJob(job, { materials });
  const state = {
    ...before,
    job,
    materials,
    materialsName: files.materials?.name ?? before.materialsName,
    font,
    waitingText: files.job === null ? before.waitingText : '',
    note: '',
  };
  if (files.artwork !== null) {
    const ownFont = files.font ?? (files.job === null ? null : await fontNamed(files.job, before.font));
    const source: ArtworkSource = { kind: 'file', ...files.artwork, font: ownFont ?? null };
    return withFile({ ...state, waitingText: '' }, source, files.job !== null);
  }
  return files.job === null ? withFont(state, files.font) : withNamed(state, files.job);
}

/** A job file without its artwork, in the unit of the page if it names none. */
function ticketOf({ schema: _, artwork: _a, text: _t, ...job }: TypedJob, { units }: TypedJob): TypedJob {
  return units === undefined ? job : { units, ...job };
}

/** A new drawing. The sizes of the job apply to it only if both came together. */
function withFile(state: PageState, source: ArtworkSource, isJobForIt: boolean): PageState {
  return { ...state, source, job: isJobForIt ? state.job : jobForSource(state.job, source, state.source) };
}

/** A font alone: for lettering that waits for one, else for what is on the sheet. */
function withFont(state: PageState, font: NamedBytes | null): PageState {
  const { source, waitingText } = state;
  if (font === null || (source === null && waitingText === '')) {
    return state;
  }
  const again: ArtworkSource =
    waitingText === '' ? { ...(source as ArtworkSource), font } : letteringSource(waitingText, font);
  return { ...state, source: again, waitingText: '', job: { ...state.job, font: font.name } };
}

/** A job file alone: sets its lettering, or asks for its drawing unless that is on the sheet. */
async function withNamed(state: PageState, file: TypedJob): Promise<PageState> {
  if (file.text !== undefined && file.artwork === undefined) {
    const font = await fontNamed(file, state.font);
    return font === undefined
      ? {
          ...state,
          waitingText: file.text,
          note: `This job sets lettering in ${file.font ?? 'a font that it does not name'}: choose that font file too.`,
        }
      : { ...state, source: letteringSource(file.text, font) };
  }
  const isShown = state.source?.kind === 'file' && state.source.name === basename(file.artwork ?? '');
  return file.artwork === undefined || isShown
    ? state
    : { ...state, note: `This job is for ${basename(file.artwork)}: choose that file too.` };
}

/** The font that a job names; `null` for letters that need none, `undefined` if it was not given. */
async function fontNamed(
  { singleLine, font: path = '' }: TypedJob,
  atHand: NamedBytes | null,
): Promise<NamedBytes | null | undefined> {
  const name = basename(path);
  if (singleLine === true) {
    return null;
  }
  if (atHand?.name === name) {
    return atHand;
  }
  const shipped = shippedFonts.find(({ file }) => file === name);
  return shipped === undefined ? undefined : { name, bytes: await fetchBytes(shipped.url) };
}

function basename(path: string): string {
  return path.replace(/^.*[/\\]/u, '');
}
