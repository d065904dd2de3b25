import type { Refusal } from 'pourproof';

/** What browsers say where a part of a page or of a worker was not to be had; each has words of its own. */
const UNFETCHED =
  /dynamically imported module|importing a module script failed|failed to fetch|networkerror|load failed|unable to preload/iu;

/** Whether an error says that something did not come over the network, which is nobody's fault here. */
export function isUnfetched(error: unknown): boolean {
  return error instanceof Error && UNFETCHED.test(error.message);
}

/** A part of the page that is not there: no fault of pourproof, and put right by whoever has a connection. */
export function pageIncomplete(what: string, where = ''): Refusal {
  return {
    code: 'page-incomplete',
    what: `${what} could not be loaded.`,
    where,
    remedy: 'Check the connection and try again, or load the page again: what you did is still there.',
  };
}
