import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type * as paper from './elements/paper.ts';
import type { Bench } from './model/bench.ts';
import { blankBench, firstBench } from './model/first-bench.ts';
import { browserLoads } from './model/loads.ts';
import { pageIncomplete } from './model/page-incomplete.ts';
import { PageModel } from './model/page-model.ts';
import type { PackedAnswer, Posted, Question } from './model/question.ts';
import type { Shelf } from './model/shelf.ts';
import { unpackAnswer } from './model/unpack-answer.ts';
import { isUnloaded, workerFault } from './model/worker-fault.ts';
import { Offline } from './offline.ts';
import { startWorker, workerUrl } from './start-worker.ts';
import { browserKeeper } from './store/browser-keeper.ts';
import type { Keeper } from './store/keeper.ts';

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
  readonly keeper: Keeper;
  readonly offline: Offline;
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
      kept: (bench) => this.keeper.keep(bench),
    });
    this.keeper = browserKeeper({
      keepAs: (id, note) => this.page.act({ do: 'keep-as', id, note }),
      changed: () => host.requestUpdate(),
    });
    this.offline = new Offline(() => host.requestUpdate());
    host.addController(this);
  }

  hostConnected(): void {
    this.#start(1);
    void this.page.lay(() => this.keeper.first(begun), NO_BEGIN);
  }

  /** Lays a job out that is kept. */
  openKept(id: string): void {
    void this.page.lay(
      () => this.keeper.open(id),
      'That job cannot be opened: another tab has it, or it is gone. Close it there and try again.',
    );
  }

  /** Begins another job beside those that are kept. */
  beginAnother(): void {
    void this.page.lay(() => this.keeper.another(begun), NO_BEGIN);
  }

  /** Takes the shelf of another tab for this job, or leaves it. */
  answerShelf(answer: 'take' | 'leave'): void {
    const { offered } = this.keeper;
    if (answer === 'leave') {
      void this.keeper.decline();
    } else if (offered !== null) {
      this.page.act({ do: 'take-shelf', shelf: offered });
      void this.keeper.refresh();
    }
  }

  /** Takes a newer version of the page, once all that was done is kept. */
  async takeNewer(): Promise<void> {
    await this.keeper.settled();
    this.offline.take();
  }

  hostDisconnected(): void {
    void this.keeper.close();
    this.#forgive();
    this.#worker?.terminate();
    this.#worker = null;
  }

  #ask(question: Question): void {
    this.#asked = question;
    if (this.#worker === null) {
      this.#start(1);
    }
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
      void this.offline.install();
    }
    if (this.paper !== null || (await this.#loadPaper())) {
      this.page.answer(unpackAnswer(answer));
    } else if (isLast) {
      this.page.answer({
        id: answer.id,
        kind: 'refused',
        refusal: pageIncomplete('The part of the page that shows proofs'),
      });
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
        // the next question gets a new one
        worker.terminate();
        this.#worker = null;
        this.page.breakDown(
          isUnloaded(event)
            ? {
                kind: 'refused',
                refusal: pageIncomplete('The part of the page that computes proofs', workerUrl),
              }
            : { kind: 'fault', message: workerFault(event) },
        );
      }
    });
  }
}

const NO_BEGIN = 'The page could not begin a job. Load it again.';

/** A first sight of the page: the demo, or a blank sheet where that was asked for or the demo cannot be fetched. */
async function begun(id: string, shelf: Shelf): Promise<Bench> {
  if (location.hash === '#blank') {
    return blankBench(id, shelf);
  }
  try {
    return firstBench(id, shelf, await browserLoads.demo());
  } catch {
    return blankBench(id, shelf);
  }
}
