import { JobError, type JobFile, type Proof, settleJob } from '@pourproof/proof';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { demoJob, demoSource } from './demo.ts';
import type { ProofAnswer, ProofRequest, Source, Trouble } from './proof-request.ts';

/** Keys are typed faster than this; the proof waits for the hand to rest, ms. */
const REST_MS = 200;

/** Everything that the page shows. */
export interface ViewState {
  readonly source: Source;
  readonly job: JobFile;
  readonly proof: Proof | null;
  readonly trouble: Trouble | null;
  /** What is wrong with the settings, in words; the last good proof stays on the page. */
  readonly jobTrouble: string | null;
  readonly isBusy: boolean;
  /** Chosen finding and place; -1 for none. */
  readonly finding: number;
  readonly place: number;
}

/** Owns the state of the page and the worker that proves. */
export class ProofController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #worker: Worker;
  #asked = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  state: ViewState = {
    source: demoSource(),
    job: demoJob(),
    proof: null,
    trouble: null,
    jobTrouble: null,
    isBusy: true,
    finding: -1,
    place: 0,
  };

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
    this.#worker = new Worker(new URL('./proof-worker.ts', import.meta.url), { type: 'module' });
    this.#worker.addEventListener('message', (event: MessageEvent<ProofAnswer>) => this.#take(event.data));
    this.#worker.addEventListener('error', (event) => {
      const trouble = {
        what: `The proof could not be started: ${event.message || 'the worker did not load'}.`,
        where: '',
        remedy: 'Load the page again; if that does not help, please report it.',
      };
      this.#set({ trouble, isBusy: false });
    });
  }

  hostConnected(): void {
    this.#ask(0);
  }

  /** Takes new artwork; the settings stay. */
  open(source: Source): void {
    this.#set({ source, proof: null, trouble: null, finding: -1, place: 0 });
    this.#ask(0);
  }

  /** Goes back to the demo artwork and its settings. */
  openDemo(): void {
    this.#set({ job: { ...demoJob(), units: this.state.job.units } });
    this.open(demoSource());
  }

  /** Changes settings; the proof follows when typing rests. */
  change(part: Partial<JobFile>): void {
    this.#set({ job: { ...this.state.job, ...part } });
    this.#ask(REST_MS);
  }

  /** Scales the artwork to a width, or back to the file's own size with `null`. */
  resize(widthMm: number | null): void {
    const { source } = this.state;
    if (source.kind === 'file') {
      this.#set({ source: { ...source, widthMm } });
      this.#ask(REST_MS);
    }
  }

  /** Chooses a finding and one of its places; -1 chooses none. */
  choose(finding: number, place = 0): void {
    this.#set({ finding, place });
  }

  #ask(waitMs: number): void {
    clearTimeout(this.#timer);
    const { job, source } = this.state;
    try {
      settleJob(job);
    } catch (error) {
      if (!(error instanceof JobError)) {
        throw error;
      }
      this.#set({ jobTrouble: error.message });
      return;
    }
    this.#asked++;
    const request: ProofRequest = { id: this.#asked, source, job };
    this.#set({ jobTrouble: null, isBusy: true });
    this.#timer = setTimeout(() => this.#worker.postMessage(request), waitMs);
  }

  #take(answer: ProofAnswer): void {
    if (answer.id !== this.#asked) {
      return;
    }
    if ('trouble' in answer) {
      this.#set({ trouble: answer.trouble, proof: null, isBusy: false, finding: -1 });
      return;
    }
    const { findings } = answer.proof.report;
    const chosen = this.state.proof?.report.findings[this.state.finding]?.code;
    const finding = findings.findIndex((each) => each.code === chosen);
    const place = finding === -1 ? 0 : Math.min(this.state.place, findings[finding]?.where.length ?? 0);
    this.#set({ proof: answer.proof, trouble: null, isBusy: false, finding, place });
  }

  #set(part: Partial<ViewState>): void {
    this.state = { ...this.state, ...part };
    this.#host.requestUpdate();
  }
}
