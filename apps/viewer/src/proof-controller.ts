import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type * as paper from './elements/paper.ts';
import { browserLoads } from './model/loads.ts';
import { PageModel } from './model/page-model.ts';
import type { PackedAnswer, Posted, Question } from './model/question.ts';
import { unpackAnswer } from './model/unpack-answer.ts';
import { isUnloaded, workerFault } from './model/worker-fault.ts';
import { startWorker, workerUrl } from './start-worker.ts';

/**
 * How long a proof that was overtaken is waited for, ms (our choice): the worker is asked to stop it and hears that between two trials of ways
 * out; one that takes longer is ended, with what its worker keeps, and the newer question starts from nothing.
 */
const PATIENCE_MS = 1000;

/** How often a worker that does not load is started. */
const MAX_TRIES = 3;

/** What shows a proof, see {@link paper}. */
type Paper = typeof paper;

/** Ties the model of the page to its element, to the worker that computes proofs and to what shows them. */
export class ProofController implements ReactiveController {
  readonly page: PageModel;
  /** What shows a proof; loaded with the first question. */
  paper: Paper | null = null;
  #worker: Worker | null = null;
  /** The question that is not answered yet, for a worker that has to be started again. */
  #asked: Question | null = null;
  #patience: ReturnType<typeof setTimeout> | null = null;

  constructor(host: ReactiveControllerHost) {
    this.page = new PageModel({
      loads: browserLoads,
      post: (question) => this.#ask(question),
      overtaken: () => this.#overtake(),
      // no answer is handed on before it is there
      shownProof: (...of) => (this.paper as Paper).shownProof(...of),
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

  #ask(question: Question): void {
    this.#asked = question;
    this.#post({ kind: 'ask', question });
    // both are fetched at once
    void this.#loadPaper();
  }

  #post(message: Posted): void {
    this.#worker?.postMessage(message);
  }

  #overtake(): void {
    if (this.#asked !== null && this.#patience === null) {
      this.#post({ kind: 'stop', id: this.#asked.id });
      this.#patience = setTimeout(() => this.#endOvertaken(), PATIENCE_MS);
    }
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

  async #loadPaper(): Promise<boolean> {
    try {
      this.paper ??= await import('./elements/paper.ts');
      return true;
    } catch {
      return false;
    }
  }

  async #hear(answer: PackedAnswer): Promise<void> {
    const isLast = answer.kind !== 'working' && answer.kind !== 'judged';
    if (isLast && answer.id === this.#asked?.id) {
      this.#asked = null;
      this.#forgive();
    }
    if (this.paper !== null || (await this.#loadPaper())) {
      this.page.answer(unpackAnswer(answer));
    } else if (isLast) {
      this.page.answer({ id: answer.id, kind: 'refused', refusal: PAPER_MISSING });
    }
  }

  #start(tries: number): void {
    const worker = startWorker();
    this.#worker = worker;
    let hasAnswered = false;
    worker.addEventListener('message', ({ data }: MessageEvent<PackedAnswer>) => {
      hasAnswered = true;
      void this.#hear(data);
    });
    worker.addEventListener('error', (event) => {
      if (isUnloaded(event) && !hasAnswered && tries < MAX_TRIES) {
        worker.terminate();
        this.#start(tries + 1);
        if (this.#asked !== null) {
          this.#post({ kind: 'ask', question: this.#asked });
        }
      } else {
        this.page.breakDown(workerFault(event, workerUrl, tries));
      }
    });
  }
}

const PAPER_MISSING = {
  code: 'page-incomplete',
  what: 'The part of the page that shows proofs could not be loaded.',
  where: '',
  remedy: 'Check the connection and load the page again.',
};
