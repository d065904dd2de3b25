import { settleJob, type TypedJob } from '@pourproof/job';
import { type ArtworkSource, letteringSource, type NamedBytes } from './artwork-source.ts';
import { jobForSource } from './job-for-source.ts';
import type { OpenedFiles } from './opened-files.ts';
import { type PageState, withoutDemo } from './page-state.ts';
import { type Shelf, tablesOf, vetOptions } from './shelf.ts';

/** A state, and what is still needed for it; `''` for nothing. */
interface Opened {
  readonly state: PageState;
  readonly note: string;
}

/**
 * The state of the page after files were opened. Files that a job names and that were not given are asked for.
 *
 * @throws {JobError} if the resulting job cannot be vetted
 */
export function openedState(now: PageState, files: OpenedFiles): Opened {
  // coupons, materials, the shop and fonts are for the demo too
  const before = files.artwork === null && files.job === null ? now : withoutDemo(now);
  const shelf = shelfWith(before.shelf, files);
  const job = withCoupons(files.job === null ? before.job : ticketOf(files.job, before.job), files, shelf);
  settleJob(job, vetOptions(tablesOf(shelf)));
  const aside = before.aside && { ...before.aside, job: withCoupons(before.aside.job, files, shelf) };
  const state: PageState = {
    ...before,
    job,
    aside,
    ticket: files.job === null ? before.ticket : before.ticket + 1,
    shelf,
    font: files.font ?? before.font,
    waitingText: files.job === null ? before.waitingText : '',
    waitingFile: files.job === null ? before.waitingFile : '',
  };
  if (files.artwork !== null) {
    const isJobForIt = files.job !== null || files.artwork.name === before.waitingFile;
    const font = files.font ?? (isJobForIt ? fontNamed(job, before.font, files) : null);
    const source: ArtworkSource = { kind: 'file', ...files.artwork, font: font ?? null };
    return asIs(withFile({ ...state, waitingText: '', waitingFile: '' }, source, isJobForIt));
  }
  return files.job === null ? asIs(withFont(state, files.font)) : withNamed(state, files.job, files);
}

function asIs(state: PageState): Opened {
  return { state, note: '' };
}

/** A shelf that nothing was opened for is the same one, which tells questions apart. */
function shelfWith(shelf: Shelf, { shop, materials, coupons }: OpenedFiles): Shelf {
  return shop === null && materials === null && coupons === null
    ? shelf
    : {
        shop: shop ?? shelf.shop,
        materials: materials ?? shelf.materials,
        coupons: coupons ?? shelf.coupons,
      };
}

/** A job with the coupons that were opened; a job file that brings none gets those of the shelf. */
function withCoupons(job: TypedJob, { coupons, job: file }: OpenedFiles, shelf: Shelf): TypedJob {
  const added = coupons ?? (file === null || job.coupons !== undefined ? null : shelf.coupons);
  return added === null ? job : { ...job, coupons: added };
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
  const { source, waitingText, aside } = state;
  if (font === null || aside !== null || (source === null && waitingText === '')) {
    return state;
  }
  const again: ArtworkSource =
    waitingText === '' ? { ...(source as ArtworkSource), font } : letteringSource(waitingText, font);
  return { ...state, source: again, waitingText: '', job: { ...state.job, font: font.name } };
}

/** A job file alone: sets its lettering, or asks for its drawing unless that is on the sheet. */
function withNamed(state: PageState, file: TypedJob, files: OpenedFiles): Opened {
  if (file.text !== undefined && file.artwork === undefined) {
    const font = fontNamed(file, state.font, files);
    return font === undefined
      ? {
          state: { ...state, waitingText: file.text },
          note: `This job sets lettering in ${file.font ?? 'a font that it does not name'}: choose that font file too.`,
        }
      : asIs({ ...state, source: letteringSource(file.text, font) });
  }
  const isShown = state.source?.kind === 'file' && state.source.name === basename(file.artwork ?? '');
  if (file.artwork === undefined || isShown) {
    return asIs(state);
  }
  const waitingFile = basename(file.artwork);
  return {
    state: { ...state, waitingFile },
    note: `This job is for ${waitingFile}: choose that file too.`,
  };
}

/** The font that a job names; `null` for letters that need none, `undefined` if it was not given. */
function fontNamed(
  { singleLine, font: path = '' }: TypedJob,
  atHand: NamedBytes | null,
  { shippedFont }: OpenedFiles,
): NamedBytes | null | undefined {
  const name = basename(path);
  if (singleLine === true) {
    return null;
  }
  return [atHand, shippedFont].find((font) => font?.name === name) ?? undefined;
}

function basename(path: string): string {
  return path.replace(/^.*[/\\]/u, '');
}
