import type { TypedJob } from '@pourproof/job';
import { type ArtworkSource, isSameArtwork, type NamedBytes } from './artwork-source.ts';
import { EMPTY_SHELF, type Shelf } from './shelf.ts';

/** Artwork and the job ticket that goes with it. */
export interface Order {
  readonly source: ArtworkSource | null;
  readonly job: TypedJob;
}

/** What a maker has put on the page. What the page works out of it is a `ShownProof`. Plain data: the browser's database holds it as it is. */
export interface PageState extends Order {
  /** Grows when another ticket takes the place of the whole one, so that what was typed for the one before is dropped. */
  readonly ticket: number;
  /** The maker's own order while the demo lies on the sheet; else `null`. */
  readonly aside: Order | null;
  readonly shelf: Shelf;
  /** The maker's own font, if one was opened. */
  readonly font: NamedBytes | null;
  /** Words of a job that wait for their font; `''` for none. */
  readonly waitingText: string;
  /** Name of the drawing that the ticket is for and that is not there yet; `''` for none. */
  readonly waitingFile: string;
}

/** The page before anything was put on it: a ticket on which all is as usual. */
export const BLANK_PAGE: PageState = {
  source: null,
  job: {},
  ticket: 0,
  aside: null,
  shelf: EMPTY_SHELF,
  font: null,
  waitingText: '',
  waitingFile: '',
};

/** A maker's own order before it has artwork: all as usual, with the coupons of the shelf. */
export function emptyOrder({ coupons }: Shelf): Order {
  return { source: null, job: coupons === null ? {} : { coupons } };
}

/** Other artwork, or another ticket, in place of the demo: the maker's own order, as it was before the demo. */
export function withoutDemo(state: PageState): PageState {
  const { aside, ticket } = state;
  return aside === null ? state : { ...state, ...aside, aside: null, ticket: ticket + 1 };
}

/** Whether two states are told apart by nothing that a maker could see. */
export function isSameState(a: PageState, b: PageState): boolean {
  return (
    a.ticket === b.ticket &&
    a.shelf === b.shelf &&
    a.font === b.font &&
    a.waitingText === b.waitingText &&
    a.waitingFile === b.waitingFile &&
    isSameOrder(a, b) &&
    (a.aside === null ? b.aside === null : b.aside !== null && isSameOrder(a.aside, b.aside))
  );
}

function isSameOrder(a: Order, b: Order): boolean {
  return isSameSource(a.source, b.source) && JSON.stringify(a.job) === JSON.stringify(b.job);
}

function isSameSource(a: ArtworkSource | null, b: ArtworkSource | null): boolean {
  return a === null || b === null ? a === b : isSameArtwork(a, b);
}
