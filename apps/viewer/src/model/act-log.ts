/** Ends a load: what was done, and whether artwork has come by it. */
export type EndLoad<Act> = (act: Act, bringsArtwork: boolean) => void;

interface Entry<Act> {
  /** `null` while it is loading what it needs. */
  act: Act | null;
  bringsArtwork: boolean;
}

/**
 * Acts in the order in which they were begun. Their state is what they make of it one after another in that order, so the order in which
 * slow loads end does not matter: a load that ends after a newer act takes its place before that act, and where both say something of the
 * same thing the newer one wins.
 */
export class ActLog<State, Act> {
  readonly #after: (state: State, act: Act) => State;
  #base: State;
  #entries: Entry<Act>[] = [];

  /** @param after what an act makes of a state; must be pure, since acts are done again when a load ends before them */
  constructor(base: State, after: (state: State, act: Act) => State) {
    this.#base = base;
    this.#after = after;
  }

  /** The state by all acts that need not be waited for. */
  get state(): State {
    return this.#done(this.#entries);
  }

  /** Whether something is being loaded that may take the place of the artwork that is there now. */
  get isLoading(): boolean {
    const newest = this.#entries.findLastIndex(({ act, bringsArtwork }) => act !== null && bringsArtwork);
    return this.#entries.some(({ act }, k) => act === null && k > newest);
  }

  /** Does something at once. */
  perform(act: Act): void {
    this.begin()(act, false);
  }

  /** Begins something that has to load first. */
  begin(): EndLoad<Act> {
    const entry: Entry<Act> = { act: null, bringsArtwork: false };
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
    this.#base = this.#done(this.#entries.slice(0, count));
    this.#entries = this.#entries.slice(count);
  }

  #done(entries: readonly Entry<Act>[]): State {
    return entries.reduce((state, { act }) => (act === null ? state : this.#after(state, act)), this.#base);
  }
}
