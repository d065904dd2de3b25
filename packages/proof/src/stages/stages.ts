import { asking } from '@pourproof/plane';

/** The stages of a proof, those that the verdict hangs on before the rest; docs/architecture.md draws what each is made from. */
export const STAGE_NAMES = [
  'rounds',
  'resolve',
  'axis',
  'widths',
  'fit',
  'cut',
  'outline',
  'standing',
  'colours',
  'board',
  'surfaces',
  'elements',
  'walls',
  'travel',
  'blocks',
  'heights',
  'margins',
  'levelling',
  'wood-axis',
  'slivers',
  'fills',
  'wood-gaps',
  'touches',
  'entering',
  'ends',
  'paths',
  'bounds',
  'contours',
] as const;
/** A stage of a proof. */
export type StageName = (typeof STAGE_NAMES)[number];

/** Someone who follows a proof. */
export interface ProofWatch {
  /** Told of each stage that is about to run; of what is kept none runs. */
  readonly onStage?: (stage: StageName) => void;
  /** Asked before and after every stage and inside long ones: once it says so, the proof ends with a {@link ProofStopped}. */
  readonly isStopped?: () => boolean;
}

/** A proof was stopped by whoever follows it. What its stages had made till then is kept. */
export class ProofStopped extends Error {
  readonly code = 'stopped';
  /** The stage that was about to run or was running; `null` between them. */
  readonly stage: StageName | null;

  constructor(stage: StageName | null) {
    super(stage === null ? 'the proof was stopped' : `the proof was stopped at its stage "${stage}"`);
    this.name = 'ProofStopped';
    this.stage = stage;
  }
}

/** A result with what it was made from. */
interface Kept {
  readonly from: readonly unknown[];
  readonly reads: string;
  readonly made: unknown;
}

/** Results kept of each stage: enough for a job, the one before it and what is tried beside them (our choice). */
const KEPT = 4;
/** Travels are small, and a board is of many woods and blocks (our choice). */
const KEPT_SMALL = 64;

const SMALL: ReadonlySet<StageName> = new Set(['travel', 'wood-gaps', 'touches']);

/**
 * Results of the stages of proofs, kept by what they were made from: a proof of a job that differs in one setting makes anew only what
 * depends on it. Of each stage the last few are kept, those asked for last.
 *
 * A stage is a pure function of results of other stages, which are the same object as long as they are kept, and of values of the job.
 */
export class Stages {
  readonly #kept: Map<StageName, Kept[]>;
  readonly #below: Stages | null;
  readonly #watch: ProofWatch;
  readonly #most: number;
  #running: StageName | null = null;

  /**
   * @param watch who follows the proofs that are made with these stages
   * @param most results that are kept of a stage
   */
  constructor(
    watch: ProofWatch = {},
    below: Stages | null = null,
    kept = new Map<StageName, Kept[]>(),
    most = KEPT,
  ) {
    this.#watch = watch;
    this.#below = below;
    this.#kept = kept;
    this.#most = most;
  }

  /** The same stages, followed by someone else. */
  watchedBy(watch: ProofWatch): Stages {
    return new Stages(watch, this.#below, this.#kept, this.#most);
  }

  /**
   * Stages for jobs that are tried: what they make is kept apart and does not push out what is kept here.
   *
   * @param most results that are kept of a stage; as many as here if left out
   */
  aside(most = KEPT): Stages {
    return new Stages(this.#watch, this, new Map(), most);
  }

  /**
   * Ends the proof if it is to be stopped. What runs inside {@link of} or {@link asking} need not be given it: its long loops ask by themselves.
   *
   * @throws {ProofStopped}
   */
  readonly poll = (): void => {
    if (this.#watch.isStopped?.() === true) {
      throw new ProofStopped(this.#running);
    }
  };

  /** Work between stages, whose long loops ask whether to go on. */
  asking<T>(work: () => T): T {
    return asking(this.poll, work);
  }

  /**
   * The result of a stage, made if it is not kept.
   *
   * @param from results of other stages, compared by identity
   * @param reads values of the job, plain data, compared by value
   * @throws {ProofStopped} when the proof is stopped
   */
  of<T>(stage: StageName, from: readonly unknown[], reads: unknown, make: () => T): T {
    const key = JSON.stringify(reads, told);
    const known = this.#find(stage, from, key);
    if (known !== null) {
      return known.made as T;
    }
    const around = this.#running;
    this.#running = stage;
    try {
      this.poll();
      this.#watch.onStage?.(stage);
      const made = asking(this.poll, make);
      this.#keep(stage, { from, reads: key, made });
      this.poll();
      return made;
    } finally {
      this.#running = around;
    }
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
    if (kept.length > (SMALL.has(stage) ? KEPT_SMALL : this.#most)) {
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
