import { JobError, type TypedJob } from '@pourproof/job';
import { defaultMaterials, type MaterialsBook } from '@pourproof/materials';
import { type FindingEntry, findingEntries } from '@pourproof/wording';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Vetted } from 'pourproof';
import { type ArtworkSource, bareSource, type NamedBytes } from './model/artwork-source.ts';
import { changedJob, type JobPart } from './model/changed-job.ts';
import { demoOrderArtwork, demoOrderJob } from './model/demo-order.ts';
import { type Failure, failureOf, faultOfOurs } from './model/failure-of.ts';
import { jobForSource } from './model/job-for-source.ts';
import { jobProblem } from './model/job-problem.ts';
import { type ChosenFile, openedFiles } from './model/opened-files.ts';
import { openedState, type PageState } from './model/opened-state.ts';
import type { Answer, Question } from './model/question.ts';

/** A place of a finding. The finding is named by its code, which outlives a new proof. */
export interface Selection {
  readonly code: string;
  readonly place: number;
}

/** The state of the page: artwork, job, proof and selection. A worker computes the proof. */
export class ProofController implements ReactiveController {
  source: ArtworkSource | null = null;
  job: TypedJob = demoOrderJob();
  materials: MaterialsBook = defaultMaterials;
  /** Name of the file of materials; `''` for those that ship with pourproof. */
  materialsName = '';
  /** The maker's own font, if one was opened. */
  font: NamedBytes | null = null;
  /** Words of a job that wait for their font; `''` for none. */
  waitingText = '';
  /** What was wrong with opened files, or what is still needed; `''` for nothing. */
  note = '';
  proof: Vetted | null = null;
  failure: Failure | null = null;
  entries: readonly FindingEntry[] = [];
  selection: Selection | null = null;
  /** Whether a newer proof than the one shown is being computed. */
  isBusy = false;

  readonly #host: ReactiveControllerHost;
  #worker: Worker | null = null;
  #asked = 0;
  #waiting: Question | null = null;
  #isWorking = false;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#worker = new Worker(new URL('./proof-worker.ts', import.meta.url), { type: 'module' });
    this.#worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => this.#answer(data));
    this.#worker.addEventListener('error', (event) => {
      const message = event.message || 'the worker could not be started';
      this.#answer({ id: this.#asked, kind: 'fault', message });
    });
  }

  hostDisconnected(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  /** Marks the shown proof as out of date as soon as other artwork is chosen, before its bytes are read. */
  awaitSource(): void {
    this.#asked += 1;
    this.#waiting = null;
    this.isBusy = true;
    this.#host.requestUpdate();
  }

  /** Vets other artwork with the present job, less what was meant for the artwork before. */
  useSource(source: ArtworkSource): void {
    this.job = jobForSource(this.job, source, this.source);
    this.source = source;
    this.selection = null;
    this.note = '';
    this.waitingText = '';
    this.font = source.kind === 'lettering' ? (source.font ?? this.font) : this.font;
    this.#ask();
  }

  /** Opens files that were dropped or chosen together. If they cannot be used nothing changes, and the page says why. */
  async openFiles(files: readonly ChosenFile[]): Promise<void> {
    this.awaitSource();
    try {
      this.#take(await openedState(this.#state(), await openedFiles(files)));
    } catch (error) {
      if (error instanceof JobError) {
        this.note = error.message;
      } else {
        const names = files.map(({ name }) => name).join(', ');
        this.note = `${names} could not be opened. Check that it is still there and is a file, not a folder, and try again.`;
      }
    }
    this.#ask();
  }

  /** Returns to the materials that ship with pourproof, unless the job needs the maker's own. */
  dropMaterials(): void {
    const refusal = jobProblem(this.job, defaultMaterials);
    this.note = refusal === '' ? '' : `The job needs these materials: ${refusal}`;
    if (refusal === '') {
      this.materials = defaultMaterials;
      this.materialsName = '';
    }
    this.#ask();
  }

  /** Vets the demo order, job and artwork. */
  async useDemo(): Promise<void> {
    this.awaitSource();
    try {
      const bytes = await demoOrderArtwork();
      this.job = { ...demoOrderJob(), units: this.job.units ?? 'mm' };
      this.useSource({ kind: 'file', name: 'board.svg', bytes, font: null });
    } catch (error) {
      this.fail(failureOf(error));
    }
  }

  /** Changes parts of the job and vets again; `undefined` resets a value to its default. */
  changeJob(part: JobPart): void {
    const job = changedJob(this.job, part);
    this.note = jobProblem(job, this.materials);
    if (this.note !== '') {
      this.#host.requestUpdate();
      return;
    }
    this.job = job;
    if (part.units !== undefined && this.proof !== null) {
      this.entries = findingEntries(this.proof.report, { units: part.units, materials: this.materials });
    }
    this.#ask();
  }

  select(selection: Selection | null): void {
    this.selection = selection;
    this.#host.requestUpdate();
  }

  /** Shows why there is no proof. */
  fail(failure: Failure): void {
    // an answer still on its way is out of date
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
      this.isBusy = false;
      this.#host.requestUpdate();
      return;
    }
    const { job, materials } = this;
    this.#waiting = { id: ++this.#asked, source: bareSource(this.source), job, options: { materials } };
    this.isBusy = true;
    this.#send();
    this.#host.requestUpdate();
  }

  #state(): PageState {
    const { source, job, materials, materialsName, font, waitingText, note } = this;
    return { source, job, materials, materialsName, font, waitingText, note };
  }

  #take({ source, job, materials, materialsName, font, waitingText, note }: PageState): void {
    Object.assign(this, { job, materials, materialsName, font, waitingText, note });
    if (source !== null && source !== this.source) {
      this.source = source;
      this.selection = null;
    }
  }

  // the worker has at most one question; while it is busy only the newest waits
  #send(): void {
    if (this.#waiting !== null && !this.#isWorking) {
      this.#isWorking = true;
      this.#worker?.postMessage(this.#waiting);
      this.#waiting = null;
    }
  }

  #answer(answer: Answer): void {
    this.#isWorking = false;
    this.#send();
    if (answer.id !== this.#asked) {
      return;
    }
    this.isBusy = false;
    if (answer.kind !== 'vetted') {
      this.fail(answer.kind === 'refused' ? answer.refusal : faultOfOurs(answer.message));
      return;
    }
    this.failure = null;
    this.proof = answer.vetted;
    this.entries = findingEntries(answer.vetted.report, {
      units: this.job.units ?? 'mm',
      materials: this.materials,
    });
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
