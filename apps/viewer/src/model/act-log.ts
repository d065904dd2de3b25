/** One thing that a maker did: what it makes of a state. */
export type Act<State> = (state: State) => State;

/** Ends a load: what it makes of the state, and whether artwork has come by it. */
export type EndLoad<State> = (act: Act<State>, bringsArtwork: boolean) => void;

interface Entry<State> {
  /** `null` while it is loading what it needs. */
  act: Act<State> | null;
  bringsArtwork: boolean;
}

/**
 * Acts in the order in which they were begun. Their state is what they make of it one after another in that order, so the order in which
 * slow loads end does not matter: a load that ends after a newer act takes its place before that act, and where both say something of the
 * same thing the newer one wins.
 */
export class ActLog<State> {
  #base: State;
  #entries: Entry<State>[] = [];

  constructor(base: State) {
    this.#base = base;
  }

  /** The state by all acts that need not be waited for. */
  get state(): State {
    return done(this.#entries, this.#base);
  }

  /** Whether something is being loaded that may take the place of the artwork that is there now. */
  get isLoading(): boolean {
    const newest = this.#entries.findLastIndex(({ act, bringsArtwork }) => act !== null && bringsArtwork);
    return this.#entries.some(({ act }, k) => act === null && k > newest);
  }

  /** Does something at once. */
  perform(act: Act<State>): void {
    this.begin()(act, false);
  }

  /** Begins something that has to load first. */
  begin(): EndLoad<State> {
    const entry: Entry<State> = { act: null, bringsArtwork: false };
    this.#entries.push(entry);
    return (act, bringsArtwork) => {
      Object.assign(entry, { act, bringsArtwork });
      this.#forget();
    };
  }

  // acts that no load can come before any more need no keeping
  #forget(): void {
    const waiting = this.#entries.findIndex(({ act }) => act === null);
    const count = waiting < 0 ? this.#entries.length : waiting;
    this.#base = done(this.#entries.slice(0, count), this.#base);
    this.#entries = this.#entries.slice(count);
  }
}

function done<State>(entries: readonly Entry<State>[], base: State): State {
  return entries.reduce((state, { act }) => (act === null ? state : act(state)), base);
}
