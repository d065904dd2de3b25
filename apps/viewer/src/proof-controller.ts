import type { JobFile, Proof } from '@pourproof/proof';
import { type FindingEntry, findingEntries } from '@pourproof/proof';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { ArtworkSource } from './model/artwork-source.ts';
import { demoOrderArtwork, demoOrderJob } from './model/demo-order.ts';
import { failureOf } from './model/failure-of.ts';
import type { Answer, Failure, Question } from './model/question.ts';

/** A place of a finding: the finding by its code, so that it outlives a new proof. */
export interface Selection {
  readonly code: string;
  readonly place: number;
}

/** Artwork without the key that the controller gives it. */
export type NewSource = ArtworkSource extends infer S
  ? S extends ArtworkSource
    ? Omit<S, 'key'>
    : never
  : never;

/** Owns all that the page shows: artwork, job, proof and selection. The proof itself is worked out in a worker. */
export class ProofController implements ReactiveController {
  source: ArtworkSource | null = null;
  job: Partial<JobFile> = demoOrderJob();
  proof: Proof | null = null;
  failure: Failure | null = null;
  entries: readonly FindingEntry[] = [];
  selection: Selection | null = null;
  /** Whether a newer proof than the one shown is being worked out. */
  isBusy = false;

  readonly #host: ReactiveControllerHost;
  #worker: Worker | null = null;
  #asked = 0;
  #waiting: Question | null = null;
  #isWorking = false;
  #keys = 0;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#worker = new Worker(new URL('./proof-worker.ts', import.meta.url), { type: 'module' });
    this.#worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => this.#take(data));
    this.#worker.addEventListener('error', (event) => {
      const failure = failureOf(new Error(event.message || 'the worker could not be started'));
      this.#take({ id: this.#asked, kind: 'failure', failure });
    });
  }

  hostDisconnected(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  /** Counts the proof shown as old from the moment that other artwork is chosen, not only once its bytes are read. */
  awaitSource(): void {
    this.#asked += 1;
    this.#waiting = null;
    this.isBusy = true;
    this.#host.requestUpdate();
  }

  /** Vets other artwork for the job as it stands; a factor that was meant for the artwork before is dropped. */
  useSource(source: NewSource): void {
    const { scale: _, width: _w, height: _h, ...job } = this.job;
    this.job = job;
    this.source = { ...source, key: ++this.#keys };
    this.selection = null;
    this.#ask();
  }

  /** Vets the demo order, job and artwork. */
  async useDemo(): Promise<void> {
    this.awaitSource();
    try {
      const bytes = await demoOrderArtwork();
      this.job = { ...demoOrderJob(), units: this.job.units ?? 'mm' };
      this.useSource({ kind: 'file', name: 'board.svg', bytes });
    } catch (error) {
      this.fail(failureOf(error));
    }
  }

  /** Changes parts of the job and vets again; `undefined` puts a value back to its default. */
  changeJob(part: { readonly [Key in keyof JobFile]?: JobFile[Key] | undefined }): void {
    const kept = Object.entries({ ...this.job, ...part }).filter(([, value]) => value !== undefined);
    this.job = Object.fromEntries(kept);
    if (part.units !== undefined && this.proof !== null) {
      this.entries = findingEntries(this.proof.report, part.units);
    }
    this.#ask();
  }

  select(selection: Selection | null): void {
    this.selection = selection;
    this.#host.requestUpdate();
  }

  /** Shows why there is no proof, when that is known before the worker is asked. */
  fail(failure: Failure): void {
    // an answer still under way would be to a question that nobody asks any more
    this.#asked += 1;
    this.#waiting = null;
    this.isBusy = false;
    this.failure = failure;
    this.proof = null;
    this.entries = [];
    this.selection = null;
    this.#host.requestUpdate();
  }

  #ask(): void {
    if (this.source === null) {
      this.#host.requestUpdate();
      return;
    }
    this.#waiting = { id: ++this.#asked, source: this.source, job: this.job };
    this.isBusy = true;
    this.#send();
    this.#host.requestUpdate();
  }

  // at most one question is with the worker; while it works, only the newest one waits
  #send(): void {
    if (this.#waiting !== null && !this.#isWorking) {
      this.#isWorking = true;
      this.#worker?.postMessage(this.#waiting);
      this.#waiting = null;
    }
  }

  #take(answer: Answer): void {
    this.#isWorking = false;
    this.#send();
    if (answer.id !== this.#asked) {
      return;
    }
    this.isBusy = false;
    if (answer.kind === 'failure') {
      this.fail(answer.failure);
      return;
    }
    this.failure = null;
    this.proof = answer.proof;
    this.entries = findingEntries(answer.proof.report, this.job.units ?? 'mm');
    this.selection = this.#stillThere(this.selection);
    this.#host.requestUpdate();
  }

  #stillThere(selection: Selection | null): Selection | null {
    const entry = this.entries.find(({ code }) => code === selection?.code);
    return selection === null || entry === undefined
      ? null
      : { code: entry.code, place: Math.max(0, Math.min(selection.place, entry.places.length - 1)) };
  }
}
