import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { browserLoads } from './model/loads.ts';
import { PageModel } from './model/page-model.ts';
import type { Answer } from './model/question.ts';
import { startWorker } from './start-worker.ts';

/** Ties the model of the page to its element and to the worker that computes proofs. */
export class ProofController implements ReactiveController {
  readonly page: PageModel;
  #worker: Worker | null = null;

  constructor(host: ReactiveControllerHost) {
    this.page = new PageModel({
      loads: browserLoads,
      post: (question) => this.#worker?.postMessage(question),
      changed: () => host.requestUpdate(),
    });
    host.addController(this);
  }

  hostConnected(): void {
    this.#worker = startWorker();
    this.#worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => this.page.answer(data));
    this.#worker.addEventListener('error', (event) =>
      this.page.breakDown(event.message || 'the worker could not be started'),
    );
  }

  hostDisconnected(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }
}
