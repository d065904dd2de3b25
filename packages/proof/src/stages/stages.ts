/** The stages of a proof in the order of the work; docs/architecture.md draws what each is made from. */
export const STAGE_NAMES = [
  'rounds',
  'resolve',
  'axis',
  'widths',
  'fit',
  'cut',
  'outline',
  'paths',
  'standing',
  'entering',
  'colours',
  'board',
  'walls',
  'travel',
  'blocks',
  'heights',
  'levelling',
  'wood-axis',
  'slivers',
  'fills',
] as const;
/** A stage of a proof. */
export type StageName = (typeof STAGE_NAMES)[number];

/** A result with what it was made from. */
interface Kept {
  readonly from: readonly unknown[];
  readonly reads: string;
  readonly made: unknown;
}

/** Results kept of each stage: enough for a job, the one before it and what is tried beside them (our choice). */
const KEPT = 4;
/** Travels are small, and a board is of many woods (our choice). */
const KEPT_TRAVELS = 64;

/**
 * Results of the stages of proofs, kept by what they were made from: a proof of a job that differs in one setting makes anew only what
 * depends on it. Of each stage the last few are kept, those asked for last.
 *
 * A stage is a pure function of results of other stages, which are the same object as long as they are kept, and of values of the job.
 */
export class Stages {
  readonly #kept = new Map<StageName, Kept[]>();
  readonly #below: Stages | null;
  readonly #onRun: (stage: StageName) => void;

  /**
   * @param onRun told of each stage that runs
   * @param below stages whose results count as kept here too, and stay as they are
   */
  constructor(onRun: (stage: StageName) => void = () => undefined, below: Stages | null = null) {
    this.#onRun = onRun;
    this.#below = below;
  }

  /** Stages for jobs that are tried: what they make is kept apart and does not push out what is kept here. */
  aside(): Stages {
    return new Stages(this.#onRun, this);
  }

  /**
   * The result of a stage, made if it is not kept.
   *
   * @param from results of other stages, compared by identity
   * @param reads values of the job, plain data, compared by value
   */
  of<T>(stage: StageName, from: readonly unknown[], reads: unknown, make: () => T): T {
    const key = JSON.stringify(reads, told);
    const known = this.#find(stage, from, key);
    if (known !== null) {
      return known.made as T;
    }
    this.#onRun(stage);
    const made = make();
    this.#keep(stage, { from, reads: key, made });
    return made;
  }

  #find(stage: StageName, from: readonly unknown[], reads: string): Kept | null {
    const kept = this.#kept.get(stage) ?? [];
    const at = kept.findIndex((each) => each.reads === reads && isSame(each.from, from));
    const found = kept[at];
    if (found !== undefined) {
      kept.splice(at, 1);
      kept.push(found);
      return found;
    }
    const below = this.#below;
    return below === null ? null : below.#find(stage, from, reads);
  }

  #keep(stage: StageName, result: Kept): void {
    const kept = this.#kept.get(stage) ?? [];
    kept.push(result);
    if (kept.length > (stage === 'travel' ? KEPT_TRAVELS : KEPT)) {
      kept.shift();
    }
    this.#kept.set(stage, kept);
  }
}

/** Numbers that JSON has no word for are told apart too. */
function told(_: string, value: unknown): unknown {
  return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((each, k) => each === other[k]);
}
