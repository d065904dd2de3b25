import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { browserLoads } from './model/loads.ts';
import { PageModel } from './model/page-model.ts';
import type { Answer, Question } from './model/question.ts';
import { isUnloaded, workerFault } from './model/worker-fault.ts';
import { startWorker, workerUrl } from './start-worker.ts';

/**
 * How long a proof that was overtaken is waited for, ms (our choice): one that takes longer is ended, with what its worker keeps, and the newer
 * question starts from nothing.
 */
const PATIENCE_MS = 1000;

/** How often a worker that does not load is started. */
const MAX_TRIES = 3;

/** Ties the model of the page to its element and to the worker that computes proofs. */
export class ProofController implements ReactiveController {
  readonly page: PageModel;
  #worker: Worker | null = null;
  /** The question that is not answered yet, for a worker that has to be started again. */
  #asked: Question | null = null;
  #patience: ReturnType<typeof setTimeout> | null = null;

  constructor(host: ReactiveControllerHost) {
    this.page = new PageModel({
      loads: browserLoads,
      post: (question) => {
        this.#asked = question;
        this.#worker?.postMessage(question);
      },
      overtaken: () => {
        this.#patience ??= setTimeout(() => this.#endOvertaken(), PATIENCE_MS);
      },
      changed: () => host.requestUpdate(),
    });
    host.addController(this);
  }

  hostConnected(): void {
    this.#start(1);
  }

  hostDisconnected(): void {
    this.#forgive();
    this.#worker?.terminate();
    this.#worker = null;
  }

  /** Ends a worker whose proof nobody waits for, and lets the newer question have another. */
  #endOvertaken(): void {
    this.#patience = null;
    if (this.#asked !== null) {
      this.#worker?.terminate();
      this.#asked = null;
      this.#start(1);
      this.page.letGo();
    }
  }

  #forgive(): void {
    if (this.#patience !== null) {
      clearTimeout(this.#patience);
      this.#patience = null;
    }
  }

  #start(tries: number): void {
    const worker = startWorker();
    this.#worker = worker;
    let hasAnswered = false;
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      hasAnswered = true;
      if (data.id === this.#asked?.id) {
        this.#asked = null;
        this.#forgive();
      }
      this.page.answer(data);
    });
    worker.addEventListener('error', (event) => {
      if (isUnloaded(event) && !hasAnswered && tries < MAX_TRIES) {
        worker.terminate();
        this.#start(tries + 1);
        if (this.#asked !== null) {
          this.#worker?.postMessage(this.#asked);
        }
      } else {
        this.page.breakDown(workerFault(event, workerUrl, tries));
      }
    });
  }
}
