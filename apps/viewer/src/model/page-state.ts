import type { TypedJob } from '@pourproof/job';
import { defaultMaterials, type MaterialsBook } from '@pourproof/materials';
import type { ArtworkSource, NamedBytes } from './artwork-source.ts';

/** Artwork and the job ticket that goes with it. */
export interface Order {
  readonly source: ArtworkSource | null;
  readonly job: TypedJob;
}

/** What a maker has put on the page. What the page works out of it is a {@link ShownProof}. */
export interface PageState extends Order {
  /** Grows when another ticket takes the place of the whole one, so that what was typed for the one before is dropped. */
  readonly ticket: number;
  /** The maker's own order while the demo lies on the sheet; else `null`. */
  readonly aside: Order | null;
  readonly materials: MaterialsBook;
  /** Name of the file of materials; `''` for those that ship with pourproof. */
  readonly materialsName: string;
  /** The maker's own font, if one was opened. */
  readonly font: NamedBytes | null;
  /** Words of a job that wait for their font; `''` for none. */
  readonly waitingText: string;
  /** Name of the drawing that the ticket is for and that is not there yet; `''` for none. */
  readonly waitingFile: string;
  /** What was wrong with opened files, or what is still needed; `''` for nothing. */
  readonly note: string;
}

/** The page before anything was put on it: a ticket on which all is as usual. */
export const BLANK_PAGE: PageState = {
  source: null,
  job: {},
  ticket: 0,
  aside: null,
  materials: defaultMaterials,
  materialsName: '',
  font: null,
  waitingText: '',
  waitingFile: '',
  note: '',
};

/** Other artwork, or another ticket, in place of the demo: the maker's own order, as it was before the demo. */
export function withoutDemo(state: PageState): PageState {
  const { aside, ticket } = state;
  return aside === null ? state : { ...state, ...aside, aside: null, ticket: ticket + 1 };
}
