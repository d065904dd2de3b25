import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { browserLoads } from './model/loads.ts';
import { PageModel } from './model/page-model.ts';
import type { Answer, Question } from './model/question.ts';
import { isUnloaded, workerFault } from './model/worker-fault.ts';
import { startWorker, workerUrl } from './start-worker.ts';

/** How often a worker that does not load is started. */
const MAX_TRIES = 3;

/** Ties the model of the page to its element and to the worker that computes proofs. */
export class ProofController implements ReactiveController {
  readonly page: PageModel;
  #worker: Worker | null = null;
  /** The question that is not answered yet, for a worker that has to be started again. */
  #asked: Question | null = null;

  constructor(host: ReactiveControllerHost) {
    this.page = new PageModel({
      loads: browserLoads,
      post: (question) => {
        this.#asked = question;
        this.#worker?.postMessage(question);
      },
      changed: () => host.requestUpdate(),
    });
    host.addController(this);
  }

  hostConnected(): void {
    this.#start(1);
  }

  hostDisconnected(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  #start(tries: number): void {
    const worker = startWorker();
    this.#worker = worker;
    let hasAnswered = false;
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      hasAnswered = true;
      if (data.id === this.#asked?.id) {
        this.#asked = null;
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
